import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { CourseSettings, TemperatureCourse } from '@/lib/cure/course';
import type { CureLaw, LaneRate } from '@/lib/cure/lane-rate';
import { readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** Courses, settings and sheets that tests of the cure share. */

export const START_AT = Date.UTC(2026, 1, 11);

/** A shop at one temperature, with nothing uncertain. */
export function steadyShop(temperatureC: number, zone = 'UTC'): CourseSettings {
  return {
    zone,
    profile: { otherwiseC: temperatureC, periods: [] },
    profileToleranceC: 0,
    sensorToleranceC: 0,
    floorC: temperatureC,
    ceilingC: temperatureC,
  };
}

/** A log given as [minute, degC], from its first to its last reading. */
export function courseOfLog(log: readonly (readonly [number, number])[], settings: CourseSettings): TemperatureCourse {
  const at = log.map(([minute]) => START_AT + minute * MINUTE_MS);
  const series = readingSeries(
    at,
    log.map(([, temperatureC]) => temperatureC),
  );
  return temperatureCourse(series, settings, at[0] ?? START_AT, at.at(-1) ?? START_AT);
}

/** Steps of constant temperature, [hours, degC], with nothing uncertain. */
export function courseOfSteps(steps: readonly (readonly [number, number])[]): TemperatureCourse {
  const at: number[] = [];
  const temperatures: number[] = [];
  let now = START_AT;
  for (const [hours, temperatureC] of steps) {
    at.push(now, now + hours * HOUR_MS);
    temperatures.push(temperatureC, temperatureC);
    now += hours * HOUR_MS;
  }
  const column = Float64Array.from(temperatures);
  return {
    startAt: START_AT,
    endAt: now,
    length: at.length,
    at: Float64Array.from(at),
    lowC: column,
    centralC: column,
    highC: column,
    kinds: new Uint8Array(at.length),
    gaps: [],
    gapLimitMs: 30 * MINUTE_MS,
  };
}

const BOX = { low: 45, central: 55, high: 65 } as const;

/** The pack's epoxy: reference 25 degC, 55 (45 to 65) kJ/mol, no cure below `minCureC`. */
export function law(minCureC = Number.NEGATIVE_INFINITY): CureLaw {
  return { referenceC: 25, minCureC, rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: BOX } };
}

export function sheet(changes: Partial<AdhesiveSheet> = {}): AdhesiveSheet {
  return { ...law(10), potLife: [], milestoneHours: {}, sources: {}, ...changes };
}

/** Nodes and weights of five-point Gauss-Legendre on [-1, 1]. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
];

/**
 * Fine quadrature of a rate over a ramp, by another rule than the product's: cut at the given temperatures, then
 * five-point Gauss on sub-ramps of at most half a degree.
 */
export function fineRampAge(
  rateAt: (temperatureC: number) => number,
  cuts: readonly number[],
  from: number,
  to: number,
): number {
  if (from === to) return rateAt(from);
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const bounds = [low, ...cuts.filter((cut) => cut > low && cut < high).sort((a, b) => a - b), high];
  let sum = 0;
  for (let i = 1; i < bounds.length; i++) {
    const begin = bounds[i - 1] ?? low;
    const end = bounds[i] ?? high;
    const parts = Math.ceil((end - begin) / 0.5);
    const width = (end - begin) / parts;
    for (let part = 0; part < parts; part++) {
      for (const [node, weight] of GAUSS) sum += rateAt(begin + width * (part + (1 + node) / 2)) * weight * (width / 2);
    }
  }
  return sum / (high - low);
}

/** The rate of a lane in its own words, for the fine quadrature. */
export function cutsOf(rate: LaneRate): readonly number[] {
  return [rate.stopBelowC, rate.splitC];
}
