import { describe, expect, it } from 'vitest';
import { questionsOf, readingsOf, readLog } from './read-log';

const at = '2026-02-11T00:00Z';

describe('forms of time', () => {
  it.each([
    ['ISO with T and Z', '2026-02-11T00:00:00Z'],
    ['ISO with a fraction and an offset', '2026-02-10T18:00:00.000-06:00'],
    ['offset without a colon', '2026-02-11 01:00+0100'],
    ['offset after UTC', '2026-02-11 01:00 UTC+1'],
    ['basic ISO', '20260211T000000Z'],
    ['packed digits', '20260210180000'],
    ['slashes, year first', '2026/02/10 18:00'],
    ['dots, year first', '2026.2.10 18:00'],
    ['month name', '10-Feb-2026 18:00'],
    ['month name first, with a weekday', 'Tue, Feb 10 2026 6:00 PM'],
    ['German month name', '10. Februar 2026 18:00'],
    ['two-digit year with dots', '10.02.26 18:00'],
    ['day of the year', '2026-041 18:00'],
    ['day above 12 first', '10/02/2026 18:00\n13/02/2026 18:00'],
  ])('%s', (_name, stamp) => {
    const rows = stamp.split('\n').map((one) => `${one};21.5`);
    expect(readingsOf(`time;temp C\n${rows.join('\n')}\n`)[0]).toEqual([at, 21.5]);
  });

  it.each([
    ['12:00 AM is midnight', '02/11/2026 12:00:00 AM', '2026-02-11T06:00Z'],
    ['12:30 PM is past noon', '02/11/2026 12:30 p.m.', '2026-02-11T18:30Z'],
    ['24:00 is the end of the day', '2026-02-10 24:00', '2026-02-11T06:00Z'],
  ])('%s', (_name, stamp, expected) => {
    expect(readingsOf(`time;Temp (°F)\n${stamp};70.7\n`)).toEqual([[expected, 21.5]]);
  });

  it('keeps fractions of a second', () => {
    const rows = '2026-02-11T00:00:00.250Z;20\n2026-02-11T00:00:00.5Z;21\n';
    expect(readingsOf(`time;temp C\n${rows}`).map(([stamp]) => stamp)).toEqual([
      '2026-02-11T00:00:00.250Z',
      '2026-02-11T00:00:00.500Z',
    ]);
  });

  it('year, day of the year and hhmm, without headings', () => {
    const file = '2009,105,1051,12.3\n2009,105,1052,12.4\n2009,105,2400,12.5\n';
    expect(readingsOf(file).map(([stamp]) => stamp)).toEqual([
      '2009-04-15T15:51Z',
      '2009-04-15T15:52Z',
      '2009-04-16T05:00Z',
    ]);
  });

  it('month, day and hour in columns of their own: asks the year, and counts it on', () => {
    const file = 'Month;Day;Hour;Temp [°C]\n12;31;23;4.0\n12;31;24;5.0\n1;1;1;6.0\n';
    expect(questionsOf(file)).toEqual(['year']);
    expect(readingsOf(file, { timeZone: 'UTC', answers: { firstYear: 2025 } })).toEqual([
      ['2025-12-31T23:00Z', 4],
      ['2026-01-01T00:00Z', 5],
      ['2026-01-01T01:00Z', 6],
    ]);
  });

  it('date and hour', () => {
    expect(readingsOf('date,hour,temp C\n2026-02-10,18,21.5\n2026-02-10,19,21.5\n')[0]).toEqual([at, 21.5]);
  });

  it('serial days, to the minute or the second by their decimals', () => {
    expect(readingsOf('Date;T [°C]\n46063,7500;21,5\n46063,760421;21,0\n').map(([stamp]) => stamp)).toEqual([
      at,
      '2026-02-11T00:15Z',
    ]);
  });

  it('takes the zone a heading names', () => {
    const file = '#,"Date Time, GMT-05:00","Temp, °C"\n1,02/13/26 07:00:00 PM,21.5\n2,02/13/26 07:15:00 PM,21.5\n';
    expect(readingsOf(file)[0]).toEqual(['2026-02-14T00:00Z', 21.5]);
  });
});

describe('forms of the table', () => {
  const rows = [
    ['2026-02-10 18:00:00', '21.5'],
    ['2026-02-10 18:15:00', '21.0'],
  ];

  it.each([',', ';', '\t', '|'])('separated by %j', (separator) => {
    const file = rows.map((row) => row.join(separator)).join('\r\n');
    expect(readingsOf(file)[0]).toEqual([at, 21.5]);
  });

  it('a first line names the separator', () => {
    expect(readingsOf('sep=;\ntime;temp C;note\n2026-02-10 18:00;21,5;a, b, c\n')).toEqual([[at, 21.5]]);
    expect(readLog('sep=;\ntime;temp C\n2026-02-10 18:00;21,5\n')).toMatchObject({
      report: { counts: { heading: 2 } },
    });
  });

  it.each(['\n', '\r\n', '\r'])('lines ended by %j, however the bytes arrive', (end) => {
    const file = ['time,temp C', ...rows.map((row) => row.join(','))].join(end) + end;
    for (const chunk of [1, 2, 3, 5, 8, 13, 1000]) {
      expect(readingsOf(file, { chunk })).toEqual([
        [at, 21.5],
        ['2026-02-11T00:15Z', 21],
      ]);
    }
  });

  it.each(['utf-16le', 'utf-16be'] as const)('%s with a byte order mark', (encoding) => {
    const text = '\uFEFFDatum;Temperatur [°C]\n10.02.2026 18:00;21,5\n';
    const bytes = new Uint8Array(text.length * 2);
    for (let index = 0; index < text.length; index += 1) {
      const code = text.charCodeAt(index);
      bytes[index * 2 + (encoding === 'utf-16le' ? 0 : 1)] = code & 255;
      bytes[index * 2 + (encoding === 'utf-16le' ? 1 : 0)] = code >> 8;
    }
    expect(readingsOf(bytes)).toEqual([[at, 21.5]]);
  });

  it('NUL characters are left out', () => {
    expect(readingsOf('2026-02-10 18:00:00,21.5\u0000\u0000\n2026-02-10 18:15:00,21.0\n')[0]).toEqual([at, 21.5]);
  });

  it('names, units and kinds in lines below each other', () => {
    const file =
      '"LOG5","station","x"\n"TIMESTAMP","RECORD","Air"\n"TS","RN","Deg F"\n"","","Avg"\n"2026-02-10 18:00:00",0,70.7\n"2026-02-10 18:15:00",1,69.8\n';
    expect(readingsOf(file)[0]).toEqual([at, 21.5]);
    expect(readLog(file)).toMatchObject({ report: { counts: { heading: 4, accepted: 2 } } });
  });

  it('quoted fields with separators in them, padded fields, values with their unit', () => {
    expect(readingsOf('"time","note","temp"\n"2026-02-10 18:00","warm, dry","21,5 °C"\n')).toEqual([[at, 21.5]]);
    expect(readingsOf('time , temp C\n 2026-02-10 18:00 ,  21.5  \n')).toEqual([[at, 21.5]]);
    expect(readingsOf('time,temp\n2026-02-10 18:00,70.7F\n2026-02-10 18:15,69.8F\n')[0]).toEqual([at, 21.5]);
  });

  it('an open quote spoils its own line and no other', () => {
    const file = 'time,temp C,note\n2026-02-10 18:00,21.5,"a\n2026-02-10 18:15,21.0,b\n2026-02-10 18:30,"20.5",c\n';
    expect(readingsOf(file)).toEqual([
      ['2026-02-11T00:15Z', 21],
      ['2026-02-11T00:30Z', 20.5],
    ]);
    expect(readLog(file)).toMatchObject({ report: { refusedRows: [{ line: 2, reason: 'open-quote' }] } });
  });

  it('reads humidity beside the temperature, and passes over what is none', () => {
    const result = readLog(
      'time,rel. humidity %,temp C\n2026-02-10 18:00,45.5,21.5\n2026-02-10 18:15,145,21\n2026-02-10 18:30,,21\n',
    );
    expect(result).toMatchObject({ state: 'read', report: { badHumidityRows: 1 } });
    if (result.state === 'read')
      expect(Array.from(result.readings.humidityPct ?? [])).toEqual([45.5, Number.NaN, Number.NaN]);
  });

  it('reads a log that runs from the newest to the oldest', () => {
    const file = '2026-02-10 18:15,21.0\n2026-02-10 18:00,21.5\n';
    expect(readingsOf(file)[0]).toEqual([at, 21.5]);
    expect(readLog(file)).toMatchObject({ report: { isBackwards: true, outOfOrderRows: 0 } });
  });

  it('sorts rows out of order and says how many there were', () => {
    const file = '2026-02-10 18:00,1\n2026-02-10 18:30,3\n2026-02-10 18:15,2\n2026-02-10 18:45,4\n';
    expect(readingsOf(file).map(([, value]) => value)).toEqual([1, 2, 3, 4]);
    expect(readLog(file)).toMatchObject({ report: { outOfOrderRows: 1 } });
  });
});
