/** The scale a mix is weighed on. */
export interface Scale {
  /** Its display step, g. */
  readonly stepG: number;
  /** How far one reading may be off, g: at least a step. */
  readonly errorG: number;
}

/** What goes into one cup, in whole steps of the scale. */
export interface Doses {
  readonly ok: true;
  readonly partAG: number;
  /** 0 for a one-part product. */
  readonly partBG: number;
  /** The sum of the two. */
  readonly massG: number;
  readonly partASteps: number;
  readonly partBSteps: number;
  /** How far A to B lies off by rounding to steps alone; + is too much A. */
  readonly ratioError: number;
  /** How far it may lie off when both readings are off the wrong way. */
  readonly worstRatioError: number;
}

export type DosesResult =
  | Doses
  /** No cup up to `mostG` can be weighed within the tolerance. `leastG` could be, by the formula. */
  | { readonly ok: false; readonly code: 'cannot-weigh'; readonly leastG: number };

/**
 * The least mix that keeps its ratio when both parts are weighed wrong by `errorG` the unlucky way, g.
 *
 * e (1 + r) (1 + r + r t) / (r t): exact. The first-order form e (1 + r)^2 / (r t) is printed more often and is too low by
 * the share r t / (1 + r).
 * Throws RangeError unless all are positive.
 * Source: (m_A + e) / (m_B - e) <= r (1 + t), solved for m_A + m_B (derived).
 */
export function leastWeighableMixG(errorG: number, aPerB: number, tolerance: number): number {
  if (!(errorG > 0 && aPerB > 0 && tolerance > 0)) {
    throw new RangeError(`leastWeighableMixG needs positive figures, got ${errorG}, ${aPerB}, ${tolerance}`);
  }
  return (errorG * (1 + aPerB) * (1 + aPerB + aPerB * tolerance)) / (aPerB * tolerance);
}

/** How many steps above the need are tried for a closer ratio. Chosen: enough for 10 : 1. */
const TRIED_STEPS = 400;

/**
 * The smallest doses in whole steps that give at least `neededG` and hold the ratio within `tolerance`, readings off by
 * the scale's error included. `aPerB` null: a one-part product, only rounded up.
 *
 * Throws RangeError unless the need, the step and the error are positive.
 */
export function doses(
  neededG: number,
  aPerB: number | null,
  tolerance: number,
  scale: Scale,
  mostG = Number.POSITIVE_INFINITY,
): DosesResult {
  const { stepG, errorG } = scale;
  if (!(neededG > 0 && Number.isFinite(neededG) && stepG > 0 && errorG > 0)) {
    throw new RangeError(`doses needs a positive need, step and error, got ${neededG}, ${stepG}, ${errorG}`);
  }
  if (aPerB === null) {
    const steps = stepsFor(neededG, stepG);
    return { ok: true, ...weighed(steps, 0, stepG), ratioError: 0, worstRatioError: 0 };
  }
  const leastG = leastWeighableMixG(errorG, aPerB, tolerance);
  const first = stepsFor(Math.max(neededG, leastG), stepG);
  for (let total = first; total <= first + TRIED_STEPS && total * stepG <= mostG * (1 + 1e-9); total++) {
    const partA = Math.round((total * aPerB) / (1 + aPerB));
    const partB = total - partA;
    if (partA < 1 || partB * stepG <= errorG) continue;
    const worstRatioError = Math.max(
      (partA * stepG + errorG) / (partB * stepG - errorG) / aPerB - 1,
      1 - (partA * stepG - errorG) / (partB * stepG + errorG) / aPerB,
    );
    if (worstRatioError > tolerance * (1 + 1e-9)) continue;
    return { ok: true, ...weighed(partA, partB, stepG), ratioError: partA / partB / aPerB - 1, worstRatioError };
  }
  return { ok: false, code: 'cannot-weigh', leastG };
}

function stepsFor(massG: number, stepG: number): number {
  return Math.ceil(massG / stepG - 1e-9);
}

function weighed(partASteps: number, partBSteps: number, stepG: number) {
  const grams = (steps: number) => Number((steps * stepG).toFixed(6));
  return {
    partASteps,
    partBSteps,
    partAG: grams(partASteps),
    partBG: grams(partBSteps),
    massG: grams(partASteps + partBSteps),
  };
}
