import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readLog } from '../lib/exchange/read-log';

/**
 * A real hourly temperature record: hourly normals of Seattle 1981-2010 of NOAA's National Climatic Data Center, as the
 * npm package vega-datasets 3.2.1 carries it (seattle-weather-hourly-normals.csv; U.S. Government data). It is written
 * in local standard time without summer time, and begins at 01:00 on 1 January.
 */
const file = readFileSync(
  new URL('../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv', import.meta.url),
);
const seattle = { timeZone: 'America/Los_Angeles', chunk: 4096 };

describe('a real year of hourly temperatures', () => {
  it('finds the temperature among other columns, and asks about the clock', () => {
    const result = readLog(file, seattle);
    expect(result).toMatchObject({
      state: 'asks',
      questions: [{ kind: 'clock', sign: 'skipped-hour', wallMs: Date.UTC(2010, 2, 14, 2) }],
      report: { layout: { headings: ['date', 'pressure', 'temperature', 'wind'], temperatureColumn: 2, unit: 'C' } },
    });
  });

  it('as standard time has 8,759 hours without a gap', () => {
    const result = readLog(file, { ...seattle, answers: { clock: 'standard-all-year' } });
    expect(result).toMatchObject({
      state: 'read',
      report: {
        counts: { lines: 8760, heading: 1, accepted: 8759, duplicate: 0, refused: 0 },
        notes: {
          firstAt: Date.UTC(2010, 0, 1, 9),
          lastAt: Date.UTC(2011, 0, 1, 7),
          medianStepMs: 3_600_000,
          gapCount: 0,
        },
      },
    });
  });

  it('gives every temperature of the file, in its order', () => {
    const result = readLog(file, { ...seattle, answers: { clock: 'standard-all-year' } });
    const written = file
      .toString('utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => Number(line.split(',')[2]));
    expect(result.state === 'read' && Array.from(result.readings.temperatureC)).toEqual(written);
  });
});
