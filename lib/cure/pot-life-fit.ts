import { COMMON_ACTIVATION_ENERGY_KJ_PER_MOL, judgedActivationEnergy } from '@/lib/cure/activation-energy';
import type { AdhesiveSheet, Box, PotLifePoint, RateLaw } from '@/lib/cure/adhesive-sheet';
import { laneRate, rateOn } from '@/lib/cure/lane-rate';
import { GAS_CONSTANT, ZERO_C_IN_K } from '@/lib/cure/rate-curve';

/**
 * What a pot life was computed from. `one-point`: the sheet's only point, with the sheet's or the common boxes.
 * `masses`, `temperatures`, `both`: what the sheet's points themselves tell. `nearest-point`: mass and temperature
 * change together from point to point, so neither effect can be told, and the nearest point is used like a single one.
 */
export type PotLifeBasis = 'one-point' | 'masses' | 'temperatures' | 'both' | 'nearest-point';

interface PotLifeFit {
  readonly lowerMinutes: number;
  readonly centralMinutes: number;
  readonly upperMinutes: number;
  readonly basis: PotLifeBasis;
}

/**
 * Exponent b of pot life ~ mass^-b without a second mass on the sheet. Chosen: a computed heat
 * balance gives 0.06 to 0.18 between 10 and 100 g, anecdotes of large cups up to 0.4.
 */
const COMMON_MASS_EXPONENT: Box = { low: 0.05, central: 0.2, high: 0.4 };
/** A thin film gains no more than this over the sheet's cup. Chosen. */
const FILM_GAIN = 2.5;
const MOST_FILM_GAIN = 4;
/** What a fitted pot life may be off, inside the sheet's points and beyond. Chosen. */
const FITTED_SPREAD = 0.2;
const EXTRAPOLATED_SPREAD = 0.4;
/** Chosen: below this share of independent variation two effects cannot be told apart. */
const LEAST_INDEPENDENCE = 1e-6;

/**
 * Pot life of one criterion's points (one or more) at a mass and a temperature; null when the points contradict each
 * other. Points are fitted by least squares of ln P on ln m and 1/T, as far as they vary.
 */
export function fitPotLife(
  sheet: Pick<AdhesiveSheet, 'rateLaw' | 'massExponent'>,
  points: readonly PotLifePoint[],
  massG: number,
  temperatureC: number,
  isExtrapolated: boolean,
): PotLifeFit | null {
  const plane = fitPlane(points);
  const energy = plane.kelvin === null ? null : judgedActivationEnergy((plane.kelvin * GAS_CONSTANT) / 1000);
  if (energy?.ok === false || (plane.exponent !== null && plane.exponent < 0)) return null;
  const exponent = plane.exponent === null ? (sheet.massExponent ?? COMMON_MASS_EXPONENT) : certain(plane.exponent);
  const law: RateLaw =
    energy === null
      ? lawOrCommon(sheet.rateLaw)
      : { kind: 'arrhenius', activationEnergyKjPerMol: certain(energy.kjPerMol) };
  const timesAt = (point: PotLifePoint) =>
    factors(law, exponent, massG / point.massG, temperatureC, point.temperatureC);
  const anchor = nearest(points, (point) => Math.abs(Math.log(timesAt(point).central)));
  const minutes = plane.basis === 'nearest-point' || points.length === 1 ? anchor.minutes : plane.minutesAt(anchor);
  const { lower, central, upper } = timesAt(anchor);
  const isFitted = plane.exponent !== null || plane.kelvin !== null;
  const spread = isFitted ? (isExtrapolated ? EXTRAPOLATED_SPREAD : FITTED_SPREAD) : 0;
  return {
    lowerMinutes: minutes * lower * (1 - spread),
    centralMinutes: minutes * central,
    upperMinutes: minutes * upper * (1 + spread),
    basis: plane.basis,
  };
}

/** How much longer than its point a cup lasts, by mass and by temperature, over the boxes. */
function factors(law: RateLaw, exponent: Box, massRatio: number, temperatureC: number, pointC: number) {
  const cureLaw = { referenceC: pointC, rateLaw: law, minCureC: Number.NEGATIVE_INFINITY };
  const slowness = (lane: 'slow' | 'central' | 'fast') => 1 / rateOn(laneRate(cureLaw, lane), temperatureC);
  const gains = [massRatio ** -exponent.low, massRatio ** -exponent.high];
  return {
    lower: Math.min(...gains, FILM_GAIN) * slowness('fast'),
    central: Math.min(massRatio ** -exponent.central, FILM_GAIN) * slowness('central'),
    upper: Math.min(Math.max(...gains), MOST_FILM_GAIN) * slowness('slow'),
  };
}

interface Plane {
  readonly basis: PotLifeBasis;
  /** Mass exponent b, where the points tell it. */
  readonly exponent: number | null;
  /** Ea / R in kelvin, where the points tell it. */
  readonly kelvin: number | null;
  readonly minutesAt: (point: PotLifePoint) => number;
}

/** Least squares of ln P = c - b ln m + (Ea/R)/T about the means. */
function fitPlane(points: readonly PotLifePoint[]): Plane {
  const x = centred(points.map((point) => Math.log(point.massG)));
  const z = centred(points.map((point) => 1 / (point.temperatureC + ZERO_C_IN_K)));
  const y = centred(points.map((point) => Math.log(point.minutes)));
  const hasMasses = new Set(points.map((point) => point.massG)).size > 1;
  const hasTemperatures = new Set(points.map((point) => point.temperatureC)).size > 1;
  const xx = dot(x.rest, x.rest);
  const zz = dot(z.rest, z.rest);
  const xz = dot(x.rest, z.rest);
  const xy = dot(x.rest, y.rest);
  const zy = dot(z.rest, y.rest);
  const of = (basis: PotLifeBasis, exponent: number | null, kelvin: number | null): Plane => ({
    basis,
    exponent,
    kelvin,
    minutesAt: (point) => {
      const byMass = -(exponent ?? 0) * (Math.log(point.massG) - x.mean);
      const byTemperature = (kelvin ?? 0) * (1 / (point.temperatureC + ZERO_C_IN_K) - z.mean);
      return Math.exp(y.mean + byMass + byTemperature);
    },
  });
  if (!hasMasses && !hasTemperatures) return of('one-point', null, null);
  if (!hasTemperatures) return of('masses', -xy / xx, null);
  if (!hasMasses) return of('temperatures', null, zy / zz);
  const determinant = xx * zz - xz * xz;
  if (determinant < LEAST_INDEPENDENCE * xx * zz) return of('nearest-point', null, null);
  return of('both', -(xy * zz - zy * xz) / determinant, (zy * xx - xy * xz) / determinant);
}

/** A rate that does not follow temperature says nothing of a cup that warms itself: the common box holds there. */
function lawOrCommon(law: RateLaw): RateLaw {
  return law.kind === 'plain-hours'
    ? { kind: 'arrhenius', activationEnergyKjPerMol: COMMON_ACTIVATION_ENERGY_KJ_PER_MOL }
    : law;
}

function nearest(points: readonly PotLifePoint[], distance: (point: PotLifePoint) => number): PotLifePoint {
  return points.reduce((best, point) => (distance(point) < distance(best) ? point : best));
}

function certain(value: number): Box {
  return { low: value, central: value, high: value };
}

function centred(values: readonly number[]): { readonly mean: number; readonly rest: readonly number[] } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, rest: values.map((value) => value - mean) };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
}
