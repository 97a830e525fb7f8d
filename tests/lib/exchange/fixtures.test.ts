import { describe, expect, it } from 'vitest';
import { questionsOf, readingsOf, readLog } from './read-log';

// Source: fixtures F1 to F8 of section 7 of the reference pack for cure (expected instants assume America/Chicago).
describe('the logger files of the reference pack', () => {
  const evening = [
    ['2026-02-11T00:00Z', 21.5],
    ['2026-02-11T00:15Z', 21],
  ];

  it('F1: byte order mark, quoted headings, CRLF', () => {
    const file = '\uFEFF"Timestamp","Temp (°C)"\r\n2026-02-10 18:00:00,21.5\r\n2026-02-10 18:15:00,21.0\r\n';
    expect(readingsOf(file)).toEqual(evening);
  });

  it('F2: German headings, semicolons, decimal commas, date and time apart', () => {
    const file = 'Datum;Zeit;Temperatur [°C]\n10.02.2026;18:00;21,5\n10.02.2026;18:15;21,0\n';
    expect(readingsOf(file)).toEqual(evening);
  });

  it('F2 in Windows-1252, where the degree sign is the byte B0', () => {
    const file = 'Datum;Zeit;Temperatur [°C]\n10.02.2026;18:00;21,5\n10.02.2026;18:15;21,0\n';
    const bytes = Uint8Array.from(file, (character) => character.charCodeAt(0));
    expect(bytes).toContain(0xb0);
    expect(readingsOf(bytes)).toEqual(evening);
  });

  it('F3: lines about the device, a row count, 12-hour clock, degF', () => {
    const file =
      'Device: X\nSerial: 1\n\nIndex,Date,Time,Ch1 (°F)\n1,02/10/2026,06:00:00 PM,70.7\n2,02/10/2026,06:15:00 PM,69.8\n';
    expect(readingsOf(file)).toEqual(evening);
  });

  it('F4: Unix seconds and milliseconds mixed, with a warning', () => {
    const result = readLog('time,t\n1770768000,21.5\n1770768900000,21.0\n');
    expect(result).toMatchObject({ state: 'read', report: { isEpochMixed: true } });
    expect(readingsOf('time,t\n1770768000,21.5\n1770768900000,21.0\n')).toEqual(evening);
  });

  it('F5: the hour that the clock shows twice', () => {
    const file = '2026-11-01 01:30,20\n2026-11-01 01:45,20\n2026-11-01 01:00,20\n2026-11-01 01:15,20\n';
    expect(readingsOf(file).map(([at]) => at)).toEqual([
      '2026-11-01T06:30Z',
      '2026-11-01T06:45Z',
      '2026-11-01T07:00Z',
      '2026-11-01T07:15Z',
    ]);
  });

  it('F6: day and month cannot be told apart, so it asks, and both answers read', () => {
    const file = '03/04/2026 10:00;18,0\n03/04/2026 10:15;18,0\n03/04/2026 10:30;18,1\n';
    expect(questionsOf(file)).toEqual(['day-order']);
    expect(readingsOf(file, { answers: { dayOrder: 'day-first' } })[0]).toEqual(['2026-04-03T15:00Z', 18]);
    expect(readingsOf(file, { answers: { dayOrder: 'month-first' } })[0]).toEqual(['2026-03-04T16:00Z', 18]);
  });

  it('F7: the hour that the clock skips makes no gap', () => {
    const file = '2026-03-08 01:45,18\n2026-03-08 03:00,18\n2026-03-08 03:15,18\n';
    expect(readingsOf(file).map(([at]) => at)).toEqual(['2026-03-08T07:45Z', '2026-03-08T08:00Z', '2026-03-08T08:15Z']);
    expect(readLog(file)).toMatchObject({ report: { notes: { gapCount: 0, medianStepMs: 15 * 60_000 } } });
  });

  it('F8: a missing value is refused with its reason, doubled instants are averaged', () => {
    const file =
      'Timestamp,"Temp (°C)"\n2026-02-10 18:15:00,21.0\n2026-02-10 18:30:00,--\n2026-02-10 18:45:00,21.0\n2026-02-10 18:45:00,21.4\n';
    expect(readingsOf(file)).toEqual([
      ['2026-02-11T00:15Z', 21],
      ['2026-02-11T00:45Z', 21.2],
    ]);
    expect(readLog(file)).toMatchObject({
      report: {
        counts: { lines: 5, heading: 1, blank: 0, accepted: 2, duplicate: 1, refused: 1 },
        refusedRows: [{ line: 3, reason: 'no-value', text: '2026-02-10 18:30:00,--' }],
      },
    });
  });
});
