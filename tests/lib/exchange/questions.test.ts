import { describe, expect, it } from 'vitest';
import { questionsOf, readingsOf, readLog } from './read-log';

function rowsEvery(
  stepMinutes: number,
  count: number,
  stampOf: (at: Date) => string,
  from = '2026-04-03T22:00Z',
): string {
  const start = Date.parse(from);
  return Array.from(
    { length: count },
    (_, row) => `${stampOf(new Date(start + row * stepMinutes * 60_000))};18,5\n`,
  ).join('');
}

const two = (value: number) => String(value).padStart(2, '0');
const clock = (at: Date) => `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
const dayFirst = (at: Date) =>
  `${two(at.getUTCDate())}/${two(at.getUTCMonth() + 1)}/${at.getUTCFullYear()} ${clock(at)}`;
const monthFirst = (at: Date) =>
  `${two(at.getUTCMonth() + 1)}/${two(at.getUTCDate())}/${at.getUTCFullYear()} ${clock(at)}`;

describe('order of day and month', () => {
  it.each([
    ['day first', dayFirst],
    ['month first', monthFirst],
  ])('a midnight in the log tells: %s', (_name, stampOf) => {
    const first = readingsOf(rowsEvery(15, 20, stampOf), { timeZone: 'UTC' })[0];
    expect(first?.[0]).toBe('2026-04-03T22:00Z');
  });

  it.each([
    ['day first', dayFirst],
    ['month first', monthFirst],
  ])('a date far down in the log tells, behind whole days with nothing to tell: %s', (_name, stampOf) => {
    const first = readingsOf(rowsEvery(12 * 60, 24, stampOf), { timeZone: 'UTC' })[0];
    expect(first?.[0]).toBe('2026-04-03T22:00Z');
  });

  it('a habit gives way to the dates: dots with the month first', () => {
    const rows = rowsEvery(60, 30 * 24, (at) => monthFirst(at).replaceAll('/', '.'), '2026-04-03T00:00Z');
    expect(readingsOf(rows, { timeZone: 'UTC', chunk: 100 })[0]?.[0]).toBe('2026-04-03T00:00Z');
  });

  it('rows of two days a month apart, or a day apart: it asks', () => {
    const file = '01/05/2026 10:00;18\n01/05/2026 10:15;18\n02/05/2026 10:00;18\n02/05/2026 10:15;18\n';
    expect(questionsOf(file)).toEqual(['day-order']);
  });

  it('rows that fit one order only and rows that fit the other only: it asks, and then refuses the misfits', () => {
    const file = '13/04/2026 10:00;18\n04/13/2026 10:15;18\n05/04/2026 10:15;18\n';
    const result = readLog(file, { answers: { dayOrder: 'day-first' } });
    expect(result).toMatchObject({
      state: 'read',
      report: { counts: { accepted: 2, refused: 1 }, refusedRows: [{ line: 2, reason: 'bad-time' }] },
    });
  });

  it('AM and PM with degF are taken month first, but a date overrules it', () => {
    const file = 'time;Temp (°F)\n03/04/2026 10:00 AM;64\n03/04/2026 10:15 AM;64\n';
    expect(readLog(file)).toMatchObject({
      state: 'read',
      report: { layout: { dayOrder: 'month-first', dayOrderBy: 'habit' } },
    });
    expect(readLog(`${file}13/04/2026 10:15 AM;64\n`)).toMatchObject({
      report: { layout: { dayOrder: 'day-first', dayOrderBy: 'values' } },
    });
  });
});

describe('unit of temperature', () => {
  it.each([
    ['values of 35 and more', '2026-02-10 18:00;34\n2026-02-10 18:15;35\n', {}],
    ['one value of 35 and more, far down', `${rowsEvery(15, 500, (at) => at.toISOString())}2026-05-10 18:15;69\n`, {}],
    ['a shop that thinks in degF', '2026-02-10 18:00;25\n2026-02-10 18:15;26\n', { temperatureUnit: 'F' as const }],
  ])('no unit, %s: it asks', (_name, file, options) => {
    expect(questionsOf(file, options)).toEqual(['unit']);
    expect(readLog(file, { ...options, answers: { unit: 'F' } }).state).toBe('read');
  });

  it('no unit, values of a workshop in degC: taken as degC, and said so', () => {
    expect(readLog('2026-02-10 18:00;18\n2026-02-10 18:15;19\n')).toMatchObject({
      report: { layout: { unit: 'C', unitBy: 'values' } },
    });
  });

  it('kelvin by its values', () => {
    expect(readingsOf('2026-02-10 18:00;294.65\n2026-02-10 18:15;295\n')[0]?.[1]).toBe(21.5);
  });
});

describe('columns and decimals', () => {
  it('two temperatures: it asks which, and reads the one named', () => {
    const file = 'time,Ch1 (°C),Ch2 (°C)\n2026-02-10 18:00,21.5,4\n2026-02-10 18:15,21.4,5\n';
    const result = readLog(file);
    expect(result).toMatchObject({
      questions: [
        { kind: 'temperature-column', choices: [{ column: 1, name: 'Ch1 (°C)', example: '21.5' }, { column: 2 }] },
      ],
    });
    expect(readingsOf(file, { answers: { temperatureColumn: 2 } })[0]?.[1]).toBe(4);
  });

  it('still asks when the column it would show is none', () => {
    const file = 'date;pressure;inside\n2026-02-10 18:00;1016.6;21.5\n';
    expect(questionsOf(file)).toEqual(['temperature-column']);
    expect(readingsOf(file, { answers: { temperatureColumn: 2 } })[0]?.[1]).toBe(21.5);
  });

  it('dew point, alarms and humidity are not mistaken for the temperature', () => {
    const file = 'time;Dew point °C;High Alarm °C;rH %;Temperature °C\n2026-02-10 18:00;9,5;40;45;21,5\n';
    expect(readingsOf(file)[0]?.[1]).toBe(21.5);
  });

  it('21,5 between commas without headings could be two columns: it asks', () => {
    const file = '2026-02-10 18:00,21,5\n2026-02-10 18:15,21,0\n';
    expect(questionsOf(file)).toEqual(['decimal']);
    expect(readingsOf(file, { answers: { decimal: 'comma' } })[0]?.[1]).toBe(21.5);
    expect(questionsOf(file, { answers: { decimal: 'point' } })).toEqual(['temperature-column']);
  });

  it('21,5 between commas under two headings is one number', () => {
    expect(readingsOf('time,temp\n2026-02-10 18:00,21,5\n2026-02-10 18:15,21,4\n')[1]?.[1]).toBe(21.4);
  });

  it('1.234,5 and 1,234.5 are the same number', () => {
    expect(
      readLog('time;temp C\n2026-02-10 18:00;1.234,5\n2026-02-10 18:15;1,234.5\n2026-02-10 18:30;20\n'),
    ).toMatchObject({
      report: { counts: { accepted: 1, refused: 2 }, refusedBy: { 'out-of-range': 2 } },
    });
  });
});

describe('a logger that keeps standard time', () => {
  const summerless = (from: string, count: number) =>
    rowsEvery(15, count, (at) => at.toISOString().slice(0, 16).replace('T', ' '), from);

  it('has readings in the hour that is skipped: it asks', () => {
    const file = summerless('2026-03-08T01:00Z', 12);
    expect(questionsOf(file)).toEqual(['clock']);
    const kept = readingsOf(file, { answers: { clock: 'standard-all-year' } });
    expect(kept.map(([at]) => at).slice(0, 2)).toEqual(['2026-03-08T07:00Z', '2026-03-08T07:15Z']);
    expect(kept).toHaveLength(12);
  });

  it('passes once through the hour that is repeated: it asks', () => {
    expect(questionsOf(summerless('2026-11-01T00:00Z', 12))).toEqual(['clock']);
  });

  it('readings in a skipped hour, said to follow the clock, count from before the gap', () => {
    // Source: case D8 of section 6.2 of the reference pack: 02:30 on 2026-03-08 is 08:30Z.
    const file = '2026-03-08 01:30;18\n2026-03-08 02:30;18\n2026-03-08 04:00;18\n';
    expect(readingsOf(file, { answers: { clock: 'place' } })[1]?.[0]).toBe('2026-03-08T08:30Z');
  });
});
