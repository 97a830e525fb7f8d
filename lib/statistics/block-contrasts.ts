import { largestDeviationTail } from '@/lib/statistics/largest-deviation';
import { contrastVariance, type TwoWayFit } from '@/lib/statistics/two-way-fit';

/** One block of a table against the mean of the others. */
export interface BlockContrast {
  readonly block: number;
  /** Its effect less the mean effect of the others; on logarithms, exp of it less 1 is the difference in percent. */
  readonly difference: number;
  readonly t: number;
  /** The chance that the most deviant of the blocks would lie this far out or further if all were alike. */
  readonly p: number;
}

/**
 * Every block against the others, in the order of the blocks; null where the error has no freedom or no scatter, or
 * there is only one block. With three blocks one odd one makes the others look odd too: name only the largest |t|.
 *
 * `candidates`: the blocks to compare, default all; the error variance stays that of the whole table.
 * Source: the analysis of means (see `largestDeviationTail`), which is exact for a complete table.
 */
export function blockContrasts(fit: TwoWayFit, candidates?: readonly number[]): BlockContrast[] | null {
  const blocks = candidates ?? fit.blockEffects.map((_, block) => block);
  if (blocks.length < 2 || fit.freedom < 1 || fit.rss === 0) return null;
  const errorMean = fit.rss / fit.freedom;
  const share = -1 / (blocks.length - 1);
  return blocks.map((block) => {
    const weights = new Map(blocks.map((other) => [other, other === block ? 1 : share]));
    const difference = blocks.reduce((sum, i) => sum + (weights.get(i) ?? 0) * (fit.blockEffects[i] ?? 0), 0);
    const t = difference / Math.sqrt(errorMean * contrastVariance(fit.design, new Map(), weights));
    return { block, difference, t, p: largestDeviationTail(Math.abs(t), blocks.length, fit.freedom) };
  });
}
