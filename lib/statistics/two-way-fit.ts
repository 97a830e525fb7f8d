import { type Cholesky, cholesky, choleskySolved, forwardSolved } from '@/lib/statistics/cholesky';
import { isConnected } from '@/lib/statistics/connected-table';
import { centre } from '@/lib/statistics/summary';

/** One reading of a table of treatments (say lengths) and blocks (mixes), both numbered from 0. */
export interface TableReading {
  readonly treatment: number;
  readonly block: number;
  readonly y: number;
}

/** The additive model y = grand + treatment + block, fitted by least squares to whatever cells are there. */
export interface TwoWayFit {
  readonly ok: true;
  readonly treatments: number;
  readonly blocks: number;
  readonly n: number;
  /** Mean of the fitted table, every cell counted once. */
  readonly grand: number;
  /** Each sums to 0 over its levels. */
  readonly treatmentEffects: readonly number[];
  readonly blockEffects: readonly number[];
  /** One a reading. */
  readonly residuals: readonly number[];
  readonly rss: number;
  /** n - treatments - blocks + 1. */
  readonly freedom: number;
  /** Variance of a sum of effects, in units of the error variance; see `contrastVariance`. */
  readonly design: TwoWayDesign;
}

export type TwoWayResult =
  | TwoWayFit
  /** No readings; or the table falls into parts that share no treatment and no block, and cannot be told apart. */
  | { readonly ok: false; readonly code: 'no-readings' | 'not-connected' };

/** What a table's occupied cells say about the accuracy of its effects. */
export interface TwoWayDesign {
  /** True where the blocks are eliminated and the treatments kept, false the other way round. */
  readonly keepsTreatments: boolean;
  /** Readings in each level of the eliminated factor, and how they spread over the kept one. */
  readonly goneCounts: readonly number[];
  readonly spread: readonly ReadonlyMap<number, number>[];
  /** Decomposition of the reduced equations without their last level; null where only one level is kept. */
  readonly factor: Cholesky | null;
}

/**
 * Fits the additive model. Every treatment and block from 0 to the highest must have a reading: RangeError otherwise,
 * or where y is not finite. Missing cells and several readings in a cell are both fine.
 * Source: the reduced ("intrablock") normal equations of the textbooks, refined once on their own residuals.
 */
export function twoWayFit(readings: readonly TableReading[]): TwoWayResult {
  if (readings.length === 0) return { ok: false, code: 'no-readings' };
  const treatments = levelCount(readings.map((reading) => reading.treatment));
  const blocks = levelCount(readings.map((reading) => reading.block));
  if (!isConnected(readings, treatments, blocks)) return { ok: false, code: 'not-connected' };
  const design = twoWayDesign(readings, treatments, blocks);
  const middle = centre(readings.map((reading) => reading.y));
  if (!Number.isFinite(middle)) throw new RangeError('twoWayFit needs finite values');
  const kept = new Float64Array(design.keepsTreatments ? treatments : blocks);
  const gone = new Float64Array(design.goneCounts.length);
  const residuals = Float64Array.from(readings, (reading) => reading.y - middle);
  for (let turn = 0; turn < 2; turn++) addEffects(readings, design, residuals, kept, gone);
  const [treatmentSide, blockSide] = design.keepsTreatments ? [kept, gone] : [gone, kept];
  const treatmentMean = centre([...treatmentSide]);
  const blockMean = centre([...blockSide]);
  const size = readings.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0);
  const rss = residuals.reduce((sum, e) => sum + e * e, 0);
  return {
    ok: true,
    treatments,
    blocks,
    n: readings.length,
    grand: middle + treatmentMean + blockMean,
    treatmentEffects: Array.from(treatmentSide, (effect) => effect - treatmentMean),
    blockEffects: Array.from(blockSide, (effect) => effect - blockMean),
    residuals: [...residuals],
    // What is left of rounding alone is no scatter.
    rss: rss > readings.length * (2e-15 * size) ** 2 ? rss : 0,
    freedom: readings.length - treatments - blocks + 1,
    design,
  };
}

/** Number of levels, all of which must occur. */
function levelCount(levels: readonly number[]): number {
  const count = levels.reduce((most, level) => Math.max(most, level), 0) + 1;
  if (new Set(levels).size !== count || !levels.every((level) => Number.isInteger(level) && level >= 0)) {
    throw new RangeError('a table needs a reading in every treatment and block, numbered from 0');
  }
  return count;
}

function twoWayDesign(readings: readonly TableReading[], treatments: number, blocks: number): TwoWayDesign {
  const keepsTreatments = treatments <= blocks;
  const keptSize = Math.min(treatments, blocks);
  const goneCounts = new Array<number>(Math.max(treatments, blocks)).fill(0);
  const spread = goneCounts.map(() => new Map<number, number>());
  const matrix = new Float64Array((keptSize - 1) ** 2);
  const add = (i: number, j: number, value: number): void => {
    const size = keptSize - 1;
    if (i < size && j < size) matrix[i * size + j] = (matrix[i * size + j] ?? 0) + value;
  };
  for (const { treatment, block } of readings) {
    const [k, g] = keepsTreatments ? [treatment, block] : [block, treatment];
    goneCounts[g] = (goneCounts[g] ?? 0) + 1;
    const row = spread[g];
    row?.set(k, (row.get(k) ?? 0) + 1);
    add(k, k, 1);
  }
  spread.forEach((row, g) => {
    for (const [i, m] of row) for (const [j, n] of row) add(i, j, (-m * n) / (goneCounts[g] ?? 1));
  });
  const factor = keptSize > 1 ? cholesky(matrix, keptSize - 1) : null;
  if (keptSize > 1 && factor === null) throw new RangeError('a connected table must have full rank');
  return { keepsTreatments, goneCounts, spread, factor };
}

/** Solves for the effects in the residuals, adds them to `kept` and `gone`, and takes them out of the residuals. */
function addEffects(
  readings: readonly TableReading[],
  { keepsTreatments, goneCounts, spread, factor }: TwoWayDesign,
  residuals: Float64Array,
  kept: Float64Array,
  gone: Float64Array,
): void {
  const keptTotals = new Float64Array(kept.length);
  const goneTotals = new Float64Array(gone.length);
  readings.forEach(({ treatment, block }, i) => {
    const [k, g] = keepsTreatments ? [treatment, block] : [block, treatment];
    keptTotals[k] = (keptTotals[k] ?? 0) + (residuals[i] ?? 0);
    goneTotals[g] = (goneTotals[g] ?? 0) + (residuals[i] ?? 0);
  });
  spread.forEach((row, g) => {
    const goneMean = (goneTotals[g] ?? 0) / (goneCounts[g] ?? 1);
    for (const [k, count] of row) keptTotals[k] = (keptTotals[k] ?? 0) - count * goneMean;
  });
  const effects = factor === null ? new Float64Array(0) : choleskySolved(factor, keptTotals);
  const goneEffects = spread.map((row, g) => {
    let total = goneTotals[g] ?? 0;
    for (const [k, count] of row) total -= count * (effects[k] ?? 0);
    return total / (goneCounts[g] ?? 1);
  });
  effects.forEach((effect, k) => {
    kept[k] = (kept[k] ?? 0) + effect;
  });
  goneEffects.forEach((effect, g) => {
    gone[g] = (gone[g] ?? 0) + effect;
  });
  readings.forEach(({ treatment, block }, i) => {
    const [k, g] = keepsTreatments ? [treatment, block] : [block, treatment];
    residuals[i] = (residuals[i] ?? 0) - (effects[k] ?? 0) - (goneEffects[g] ?? 0);
  });
}

/**
 * Variance, in units of the error variance, of a sum of effects weighted by level. Only for sums that the table
 * determines: weights of treatments and of blocks that each sum to 0, or both to 1 (a fitted cell).
 */
export function contrastVariance(
  design: TwoWayDesign,
  treatmentWeights: ReadonlyMap<number, number>,
  blockWeights: ReadonlyMap<number, number>,
): number {
  const [keptWeights, goneWeights] = design.keepsTreatments
    ? [treatmentWeights, blockWeights]
    : [blockWeights, treatmentWeights];
  const size = design.factor?.size ?? 0;
  const w = new Float64Array(size + 1);
  for (const [k, weight] of keptWeights) w[k] = (w[k] ?? 0) + weight;
  let variance = 0;
  for (const [g, weight] of goneWeights) {
    const share = weight / (design.goneCounts[g] ?? 1);
    variance += weight * share;
    for (const [k, count] of design.spread[g] ?? []) w[k] = (w[k] ?? 0) - count * share;
  }
  if (design.factor !== null) variance += forwardSolved(design.factor, w).reduce((sum, v) => sum + v * v, 0);
  return variance;
}
