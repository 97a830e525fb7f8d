import { GAS_CONSTANT, ZERO_C_IN_K } from '@/lib/cure/rate-curve';

/**
 * A cup of mixed epoxy that warms itself: one temperature throughout, heat from an autocatalytic cure, loss to the
 * room. `da/dt = k1 F (1 + K a)(1 - a)^2`, `dT/dt = (H m da/dt - h A (T - Ta)) / (m cp)`.
 * Source: lumped heat balance with Kamal and Sourour's rate (m = 1, n = 2). Its constants are illustrative, typical of
 * room-temperature epoxies and from memory, not measured; so peaks are upper bounds.
 */
export interface CupConditions {
  readonly massG: number;
  readonly roomC: number;
  /** Temperature of the parts when mixed, degC. */
  readonly startC: number;
  /** Cooled surface, mm2; infinite: a thin film that keeps the room's temperature. */
  readonly surfaceMm2: number;
}

/** Minutes from mixing, null where it does not happen within the time computed. */
export interface CupHistory {
  /** Conversion 0.2: thick, end of use. */
  readonly thickMinutes: number | null;
  /** Conversion 1/sqrt(3): gel. */
  readonly gelMinutes: number | null;
  /** The cup first at 40 degC and at 50 degC. */
  readonly at40CMinutes: number | null;
  readonly at50CMinutes: number | null;
  readonly peakC: number;
  readonly peakMinutes: number;
}

/** Heat of cure J/g, heat capacity J/(g K), density g/cm3, loss W/(m2 K), k2/k1, kJ/mol. */
const HEAT_J_PER_G = 400;
const CAPACITY_J_PER_G_K = 1.9;
const DENSITY_G_PER_CM3 = 1.1;
const LOSS_W_PER_M2_K = 8;
const AUTOCATALYSIS = 20;
const ACTIVATION_ENERGY_J_PER_MOL = 55_000;
const REFERENCE_K = 25 + ZERO_C_IN_K;

const THICK = 0.2;
/** Flory and Stockmayer for a two-epoxy, four-amine network (from memory). */
const GEL = 1 / Math.sqrt(3);
const STEPS = 2_000;
const MOST_STEPS = 40_000;

/** All faces of a cup as high as it is wide, mm2, for `massG` of mix: `1.5 pi d^2` with `d = (4 V / pi)^(1/3)`. */
export function compactCupSurfaceMm2(massG: number): number {
  const diameterMm = ((4 * 1000 * massG) / DENSITY_G_PER_CM3 / Math.PI) ** (1 / 3);
  return 1.5 * Math.PI * diameterMm * diameterMm;
}

/**
 * Runs a cup from mixing until it has gelled and cools, by fourth-order Runge-Kutta; events interpolated between steps.
 * `ratePerMinute` is k1 at 25 degC, above 0. Accuracy 0.01 min and 0.05 degC for pot lives of minutes to hours.
 */
export function cupHistory(ratePerMinute: number, cup: CupConditions): CupHistory {
  const isFilm = cup.surfaceMm2 === Number.POSITIVE_INFINITY;
  const startC = isFilm ? cup.roomC : cup.startC;
  const advance = cupStep(ratePerMinute, cup, isFilm);
  // An isothermal mix at 25 degC is thick after about 0.095 / k1; the rest is its start temperature, roughly.
  const stepMinutes = 0.1 / (ratePerMinute * Math.exp(0.08 * (startC - 25))) / STEPS;
  let now = { conversion: 0, temperatureC: startC };
  let isOver = false;
  let minutes = 0;
  let peakC = startC;
  let peakMinutes = 0;
  let thickMinutes: number | null = null;
  let gelMinutes: number | null = null;
  let at40CMinutes = startC >= 40 ? 0 : null;
  let at50CMinutes = startC >= 50 ? 0 : null;
  for (let step = 0; step < MOST_STEPS && !isOver; step++) {
    const next = advance(now, stepMinutes);
    const passing = (from: number, to: number, level: number): number | null =>
      from < level && to >= level ? minutes + (stepMinutes * (level - from)) / (to - from) : null;
    thickMinutes ??= passing(now.conversion, next.conversion, THICK);
    gelMinutes ??= passing(now.conversion, next.conversion, GEL);
    at40CMinutes ??= passing(now.temperatureC, next.temperatureC, 40);
    at50CMinutes ??= passing(now.temperatureC, next.temperatureC, 50);
    minutes += stepMinutes;
    // Once gelled and no longer warming, nothing more is asked of it.
    isOver = gelMinutes !== null && next.temperatureC <= now.temperatureC;
    now = next;
    if (now.temperatureC > peakC) {
      peakC = now.temperatureC;
      peakMinutes = minutes;
    }
  }
  return { thickMinutes, gelMinutes, at40CMinutes, at50CMinutes, peakC, peakMinutes };
}

interface CupState {
  readonly conversion: number;
  readonly temperatureC: number;
}

/** One Runge-Kutta step of the balance. */
function cupStep(ratePerMinute: number, cup: CupConditions, isFilm: boolean) {
  const lossPerMinute = isFilm ? 0 : (60 * LOSS_W_PER_M2_K * cup.surfaceMm2 * 1e-6) / (cup.massG * CAPACITY_J_PER_G_K);
  const riseC = isFilm ? 0 : HEAT_J_PER_G / CAPACITY_J_PER_G_K;
  const curing = (a: number, temperatureC: number): number => {
    const inverse = 1 / REFERENCE_K - 1 / (temperatureC + ZERO_C_IN_K);
    const factor = Math.exp((ACTIVATION_ENERGY_J_PER_MOL / GAS_CONSTANT) * inverse);
    return ratePerMinute * factor * (1 + AUTOCATALYSIS * a) * (1 - a) * (1 - a);
  };
  const warming = (rate: number, temperatureC: number): number =>
    riseC * rate - lossPerMinute * (temperatureC - cup.roomC);
  return ({ conversion: a, temperatureC: t }: CupState, h: number): CupState => {
    const r1 = curing(a, t);
    const w1 = warming(r1, t);
    const r2 = curing(a + (h / 2) * r1, t + (h / 2) * w1);
    const w2 = warming(r2, t + (h / 2) * w1);
    const r3 = curing(a + (h / 2) * r2, t + (h / 2) * w2);
    const w3 = warming(r3, t + (h / 2) * w2);
    const r4 = curing(a + h * r3, t + h * w3);
    const w4 = warming(r4, t + h * w3);
    return {
      conversion: a + (h / 6) * (r1 + 2 * r2 + 2 * r3 + r4),
      temperatureC: t + (h / 6) * (w1 + 2 * w2 + 2 * w3 + w4),
    };
  };
}
