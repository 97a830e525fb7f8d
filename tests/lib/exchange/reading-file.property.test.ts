import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReadingFileResult } from '@/lib/exchange/reading-file-result';
import type { LayoutAnswers } from '@/lib/exchange/reading-layout';
import { readLog } from './read-log';
import {
  type Series,
  seriesOf,
  touchesRepeatedHour,
  type WritingForm,
  writingForm,
  writtenFile,
} from './written-series';

const RUNS = process.env.SOAK === '1' ? 100_000 : 3_000;
const FUZZ_RUNS = process.env.SOAK === '1' ? 100_000 : 3_000;

/** degF without a unit in the file, with values that a workshop also has in degC: nothing in the file can tell. */
function isUnitTold(form: WritingForm, series: Series): boolean {
  return form.unit !== 'F' || form.hasHeadings || series.tenths.some((tenths) => tenths >= 350);
}

/** What the maker who has the logger in hand would answer to any question. */
function trueAnswers(form: WritingForm): LayoutAnswers {
  const dayOrder = form.time === 'month-first-12h' ? 'month-first' : 'day-first';
  return { unit: form.unit, dayOrder, clock: 'place' };
}

const HAS_OFFSET: ReadonlySet<WritingForm['time']> = new Set(['iso-utc', 'iso-offset', 'unix-s', 'unix-ms']);

const written = writingForm.chain((form) => fc.tuple(fc.constant(form), seriesOf(form.unit)));

function checkAccounts(result: ReadingFileResult): void {
  if (result.state === 'unreadable') return;
  const { lines, heading, blank, accepted, duplicate, refused } = result.report.counts;
  expect(heading + blank + accepted + duplicate + refused).toBe(lines);
  const { notes, firstRows } = result.report;
  if (notes === null) {
    expect(result.state).toBe('asks');
    return;
  }
  expect([notes.firstAt, notes.lastAt, notes.lowestC, notes.highestC, notes.medianStepMs].every(Number.isFinite)).toBe(
    true,
  );
  expect(firstRows.every((row) => Number.isFinite(row.at) && Number.isFinite(row.temperatureC))).toBe(true);
  if (result.state === 'asks') expect(result.questions.length).toBeGreaterThan(0);
  if (result.state !== 'read') return;
  const { at, temperatureC, humidityPct } = result.readings;
  expect(at).toHaveLength(accepted);
  expect(temperatureC).toHaveLength(accepted);
  for (let row = 0; row < at.length; row += 1) {
    const rises = row === 0 || (at[row] ?? 0) > (at[row - 1] ?? 0);
    const value = temperatureC[row] ?? Number.NaN;
    if (!rises || !(value >= -40 && value <= 85)) throw new Error(`row ${row}: ${at[row]} ${value}`);
  }
  if (humidityPct !== null)
    expect(humidityPct.every((value) => Number.isNaN(value) || (value >= 0 && value <= 100))).toBe(true);
}

describe('reading what a logger wrote', () => {
  it('gives back the same instants and temperatures, or asks and then does', () => {
    const counts = { read: 0, asks: 0 };
    const asked = new Map<string, number>();
    fc.assert(
      fc.property(written, fc.integer({ min: 1, max: 300 }), ([form, series], chunk) => {
        const result = readLog(writtenFile(series, form), { timeZone: form.zone, chunk });
        if (result.state === 'unreadable') throw new Error(`unreadable: ${result.code}`);
        checkAccounts(result);
        counts[result.state] += 1;
        let read: ReadingFileResult = result;
        if (result.state === 'asks') {
          for (const { kind } of result.questions) asked.set(kind, (asked.get(kind) ?? 0) + 1);
          read = readLog(writtenFile(series, form), { timeZone: form.zone, chunk, answers: trueAnswers(form) });
        }
        if (read.state !== 'read') throw new Error(`not read with its answers: ${JSON.stringify(read)}`);
        const isTold = HAS_OFFSET.has(form.time) || !touchesRepeatedHour(series, form.zone);
        if (isTold) expect(Array.from(read.readings.at)).toEqual(series.at);
        const expected = series.tenths.map((tenths) => inCelsius(tenths / 10, form));
        if (isTold && (isUnitTold(form, series) || result.state === 'asks'))
          for (const [row, value] of expected.entries()) expect(read.readings.temperatureC[row]).toBeCloseTo(value, 5);
      }),
      { numRuns: RUNS },
    );
    console.info(`${RUNS} written series: ${counts.read} read, ${counts.asks} asked about`, Object.fromEntries(asked));
    expect(counts.read).toBeGreaterThan(RUNS / 2);
  });

  it('gives back a log that runs right through a clock change', () => {
    // Every step up to an hour, both changes, forwards and backwards, with at least a quarter of a day on both sides.
    const changes = {
      'America/Chicago': ['2026-03-08T08:00Z', '2026-11-01T07:00Z'],
      'Europe/Vienna': ['2026-03-29T01:00Z', '2026-10-25T01:00Z'],
      'Australia/Lord_Howe': ['2026-04-04T15:00Z', '2026-10-03T15:30Z'],
    };
    for (const [zone, instants] of Object.entries(changes)) {
      for (const instant of instants) {
        for (const stepMinutes of [1, 2, 5, 10, 15, 30, 60]) {
          for (const shift of [0, 1, 7]) {
            for (const isBackwards of [false, true]) {
              const start = Date.parse(instant) - 6 * 3_600_000 + shift * 60_000;
              const at = Array.from(
                { length: (12 * 60) / stepMinutes },
                (_, row) => start + row * stepMinutes * 60_000,
              );
              const tenths = at.map((_, row) => 180 + (row % 9));
              const form: WritingForm = {
                separator: ',',
                decimal: '.',
                unit: 'C',
                time: 'iso-local',
                encoding: 'utf-8',
                hasHeadings: true,
                hasPreamble: false,
                isQuoted: false,
                isBackwards,
                lineEnd: '\n',
                zone,
              };
              const result = readLog(writtenFile({ at, tenths }, form), { timeZone: zone, chunk: 1000 });
              if (result.state !== 'read')
                throw new Error(`${zone} ${instant} ${stepMinutes} ${shift} ${isBackwards}: ${JSON.stringify(result)}`);
              expect(
                Array.from(result.readings.at),
                `${zone} ${instant} ${stepMinutes} ${shift} ${isBackwards}`,
              ).toEqual(at);
            }
          }
        }
      }
    }
  });

  it('never throws and never gives a number that is none, whatever the bytes', () => {
    const states = new Map<string, number>();
    const shreds = fc.constantFrom(
      '2026-02-10 18:00',
      '02/10/2026',
      '18:15',
      '21,5',
      '20.5',
      '"',
      '""',
      ';',
      ',',
      '\t',
      '\n',
      '\r',
      '\r\n',
      '--',
      'Temp °C',
      'sep=;',
      '1770768000',
      '46063.75',
      'NaN',
      '1e5',
      '-',
      '+',
      '.',
      '\u0000',
      '9'.repeat(30),
      'Feb',
      'AM',
      'Z',
      '+99:00',
      '2026',
      '366',
      '2400',
    );
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 400 }),
      fc.array(shreds, { maxLength: 60 }).map((parts) => new TextEncoder().encode(parts.join(''))),
      written.chain(([form, series]) => {
        const file = writtenFile(series, form);
        return fc.array(fc.tuple(fc.nat(file.length - 1), fc.nat(255)), { maxLength: 12 }).map((changes) => {
          const damaged = Uint8Array.from(file);
          for (const [place, byte] of changes) damaged[place] = byte;
          return damaged;
        });
      }),
    );
    fc.assert(
      fc.property(bytes, fc.integer({ min: 1, max: 100 }), (file, chunk) => {
        const result = readLog(file, { chunk });
        states.set(result.state, (states.get(result.state) ?? 0) + 1);
        checkAccounts(result);
      }),
      { numRuns: FUZZ_RUNS },
    );
    console.info(`${FUZZ_RUNS} files of random or damaged bytes:`, Object.fromEntries(states));
  });
});

function inCelsius(value: number, form: WritingForm): number {
  if (form.unit === 'F') return (value - 32) / 1.8;
  return form.unit === 'K' ? value - 273.15 : value;
}
