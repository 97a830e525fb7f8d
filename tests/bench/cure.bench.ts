import { CureIndex } from '@/lib/cure/cure-index';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { laneRate } from '@/lib/cure/lane-rate';
import { readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** The figures of issue 2: a year of one-minute readings integrated, and a release inverted, in under 60 ms. */

const READINGS = 525_600;
const REPEATS = 15;
const START_AT = Date.UTC(2025, 0, 1);

const LAW = {
  referenceC: 25,
  minCureC: 10,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
} as const;

const SETTINGS = {
  zone: 'America/Chicago',
  profile: {
    otherwiseC: 15,
    periods: [{ weekdays: [1, 2, 3, 4, 5], fromMinute: 420, toMinute: 1320, temperatureC: 20 }],
  },
  profileToleranceC: 2,
  sensorToleranceC: 0.5,
  floorC: 10,
  ceilingC: 28,
} as const;

/** A year with seasons, days and a sensor's noise, in tenths of a degree or unrounded. */
function yearOfReadings(rounded: boolean): { readonly at: Float64Array; readonly temperatureC: Float64Array } {
  const at = new Float64Array(READINGS);
  const temperatureC = new Float64Array(READINGS);
  let noise = 0;
  let seed = 1;
  for (let i = 0; i < READINGS; i++) {
    seed = (seed * 48_271) % 2_147_483_647;
    noise = noise * 0.95 + (seed / 2_147_483_647 - 0.5) * 0.2;
    const day = i / 1440;
    const value = 17 + 6 * Math.sin((2 * Math.PI * (day - 100)) / 365) + 4 * Math.sin(2 * Math.PI * day) + noise;
    at[i] = START_AT + i * MINUTE_MS;
    temperatureC[i] = rounded ? Math.round(value * 10) / 10 : value;
  }
  return { at, temperatureC };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function timed(work: () => void): number {
  const times: number[] = [];
  for (let i = 0; i < REPEATS; i++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  return median(times);
}

/** Prints one line a figure, each the median of several runs. */
export function run(): void {
  const endAt = START_AT + READINGS * MINUTE_MS;
  for (const rounded of [false, true]) {
    const columns = yearOfReadings(rounded);
    const course = () =>
      temperatureCourse(readingSeries(columns.at, columns.temperatureC), SETTINGS, START_AT, endAt + 24 * HOUR_MS);
    const lanes = timed(() => {
      const { slow, central, fast } = cureLanes(course(), LAW);
      for (const lane of [slow, central, fast]) lane.instantAtAge(START_AT, 2000);
    });
    const lane = timed(() => {
      new CureIndex(course(), 'slow', laneRate(LAW, 'slow')).instantAtAge(START_AT, 2000);
    });
    const index = new CureIndex(course(), 'slow', laneRate(LAW, 'slow'));
    const release = timed(() => {
      for (let i = 0; i < 1000; i++) index.instantAtAge(START_AT + i * 7 * HOUR_MS, 24);
    });
    const kind = rounded ? 'tenths of a degree' : 'unrounded';
    console.log(`cure: ${READINGS} readings (${kind}), course + one lane + release: ${lane.toFixed(1)} ms`);
    console.log(`cure: the same on all three lanes: ${lanes.toFixed(1)} ms`);
    console.log(`cure: one more release from a finished index: ${release.toFixed(2)} us`);
  }
}
