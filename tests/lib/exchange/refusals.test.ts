import { describe, expect, it } from 'vitest';
import { LISTED_REFUSALS } from '@/lib/exchange/refusals';
import { readLog } from './read-log';

describe('rows that hold no reading', () => {
  it.each([
    ['no-value', '2026-02-10 18:30,--'],
    ['no-value', '2026-02-10 18:30,NaN'],
    ['no-value', '2026-02-10 18:30,ERR'],
    ['no-value', '2026-02-10 18:30,NC'],
    ['no-value', '2026-02-10 18:30,'],
    ['bad-value', '2026-02-10 18:30,warm'],
    ['bad-value', '2026-02-10 18:30,1-2'],
    ['bad-time', '2026-02-30 18:30,20'],
    ['bad-time', '2026-02-10 25:30,20'],
    ['bad-time', 'yesterday,20'],
    ['no-time', ',20'],
    ['too-few-fields', '2026-02-10 18:30'],
    ['out-of-range', '2026-02-10 18:30,-127'],
    ['out-of-range', '2026-02-10 18:30,85.1'],
    ['out-of-range', '2026-02-10 18:30,-40.1'],
  ])('%s: %s', (reason, row) => {
    const result = readLog(`time,temp C\n2026-02-10 18:00,21.5\n${row}\n2026-02-10 19:00,21.0\n`);
    expect(result).toMatchObject({
      state: 'read',
      report: { refusedRows: [{ line: 3, reason, text: row }], refusedBy: { [reason]: 1 }, counts: { accepted: 2 } },
    });
  });

  it('takes the ends of the sensor range', () => {
    const rows = '2026-02-10 18:00,85\n2026-02-10 18:15,84.9\n2026-02-10 18:30,-40\n';
    expect(readLog(`time,temp C\n${rows}`)).toMatchObject({ report: { counts: { accepted: 3, refused: 0 } } });
  });

  it('refuses 85.0 far from its neighbours, which some sensors say before they have measured', () => {
    const rows = '2026-02-10 18:00,85\n2026-02-10 18:15,21\n2026-02-10 18:30,85.0\n2026-02-10 18:45,21\n';
    expect(readLog(`time,temp C\n${rows}`)).toMatchObject({
      report: { counts: { accepted: 2, refused: 2 }, refusedBy: { 'power-up-value': 2 } },
    });
  });

  it.each(['2026-02-10 18:00,warm', '2026-02-10 18:00,"21', '2026-02-10 18:00'])('the first row too: %s', (row) => {
    const result = readLog(`time,temp C\n${row}\n2026-02-10 18:15,21\n2026-02-10 18:30,21\n`);
    expect(result).toMatchObject({
      report: { counts: { heading: 1, accepted: 2, refused: 1 }, refusedRows: [{ line: 2 }] },
    });
  });

  it('lists the first ones and counts all', () => {
    const bad = Array.from({ length: 1000 }, (_, row) => `2026-02-10 18:${String(row % 60).padStart(2, '0')},--\n`);
    const result = readLog(`time,temp C\n2026-02-10 18:00,21.5\n2026-02-10 18:15,21.5\n${bad.join('')}`);
    expect(result).toMatchObject({ report: { refusedBy: { 'no-value': 1000 } } });
    if (result.state === 'read') expect(result.report.refusedRows).toHaveLength(LISTED_REFUSALS);
  });

  it('a line without an end does not fill the memory and is refused', () => {
    const result = readLog(`time,temp C\n2026-02-10 18:00,21.5\n${'x'.repeat(300_000)}\n2026-02-10 18:15,21\n`, {
      chunk: 4096,
    });
    expect(result).toMatchObject({
      report: { counts: { accepted: 2, refused: 1 }, refusedBy: { 'line-too-long': 1 } },
    });
  });
});

describe('files that cannot be read', () => {
  it.each([
    ['empty', ''],
    ['empty', '\r\n\r\n  \n'],
    ['no-rows', 'hello\nworld\n'],
    ['no-rows', '{"readings":[1,2,3]}'],
    ['no-temperature', 'date,hour\n2026-02-10,18\n2026-02-10,19\n'],
    ['no-reading', 'time,temp C\n2026-02-10 18:00,--\n2026-02-10 18:15,--\n'],
    ['no-time', 'a,b\n1,2\n3,4\n'],
  ])('%s: %j', (code, file) => {
    expect(readLog(file)).toMatchObject({ state: 'unreadable', code });
  });

  it('more rows than are allowed', () => {
    const rows = Array.from({ length: 200 }, (_, row) => `${1_770_768_000 + row * 60},20\n`).join('');
    expect(readLog(rows, { maxRows: 199 })).toMatchObject({ state: 'unreadable', code: 'too-many-rows' });
    expect(readLog(rows, { maxRows: 200 }).state).toBe('read');
  });
});

describe('what a log shows of itself', () => {
  const rows = (minutes: readonly number[], value: (row: number) => number) =>
    minutes
      .map((minute, row) => `${new Date(Date.UTC(2026, 1, 10) + minute * 60_000).toISOString()},${value(row)}\n`)
      .join('');

  it('a gap is a step of more than three median steps and more than 30 minutes', () => {
    // Source: section 2.4 of the reference pack; log G has one gap, from 60 to 300 minutes.
    const logG = readLog(`time,temp C\n${rows([0, 15, 30, 45, 60, 300, 315, 330, 345, 360], (row) => 20 + row)}`);
    expect(logG).toMatchObject({
      report: { notes: { gapCount: 1, gaps: [{ fromAt: Date.UTC(2026, 1, 10, 1), toAt: Date.UTC(2026, 1, 10, 5) }] } },
    });
    expect(readLog(`time,temp C\n${rows([0, 15, 30, 75, 90], (row) => row)}`)).toMatchObject({
      report: { notes: { gapCount: 0 } },
    });
  });

  it('flags a temperature that stands still for more than 6 hours', () => {
    const hours = Array.from({ length: 20 }, (_, hour) => hour * 60);
    const stuck = readLog(`time,temp C\n${rows(hours, (row) => (row < 10 ? row : 18))}`);
    expect(stuck).toMatchObject({ report: { notes: { flatCount: 1, lowestC: 0, highestC: 18 } } });
    expect(readLog(`time,temp C\n${rows(hours, (row) => row % 7)}`)).toMatchObject({
      report: { notes: { flatCount: 0 } },
    });
  });
});
