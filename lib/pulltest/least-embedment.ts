import { type CurvePoint, type LowerModel, lowerCurve, lowerN } from '@/lib/pulltest/lower-model';
import { bracketedRoot } from '@/lib/statistics/bracketed-root';

/** The least depth whose lower value reaches a demand, within what was tested. */
export type LeastEmbedment =
  | {
      readonly kind: 'depth';
      /** Where the lower value reaches the demand; null where only whole depths were asked. */
      readonly exactMm: number | null;
      /** Rounded up to the shop's step, but not beyond the deepest tested. */
      readonly embedmentMm: number;
      readonly lowerN: number;
    }
  /** The shallowest tested already does; shallower was not tested. */
  | { readonly kind: 'shallowest-suffices'; readonly embedmentMm: number; readonly lowerN: number }
  /** Not within the tested depths; never drawn on beyond them. */
  | { readonly kind: 'not-reached'; readonly deepestMm: number; readonly lowerN: number };

/**
 * The smallest depth from which on the lower value is at least the demand up to the deepest tested. `curve`:
 * that of the model, where the caller has it. Throws RangeError unless demand and step are positive.
 *
 * A depth found so needs no further correction for having been searched: where the lower value rises with depth, the
 * answer is too small only if the bound at the true depth is.
 */
export function leastEmbedment(
  model: LowerModel,
  demandN: number,
  stepMm: number,
  curve: readonly CurvePoint[] = lowerCurve(model),
): LeastEmbedment {
  if (!(demandN > 0 && stepMm > 0)) {
    throw new RangeError(`leastEmbedment needs a positive demand and step, got ${demandN}, ${stepMm}`);
  }
  const grid = curve.map(({ depthMm }) => depthMm);
  const deepestMm = grid.at(-1) ?? 0;
  const lowers = curve.map((point) => point.lowerN);
  const last = lowers.findLastIndex((lower) => lower < demandN);
  if (last === grid.length - 1) return { kind: 'not-reached', deepestMm, lowerN: lowers.at(-1) ?? 0 };
  if (last === -1) {
    return { kind: 'shallowest-suffices', embedmentMm: grid[0] ?? 0, lowerN: lowers[0] ?? 0 };
  }
  const above = grid[last + 1] ?? deepestMm;
  if (model.kind === 'levels') {
    return { kind: 'depth', exactMm: null, embedmentMm: above, lowerN: lowers[last + 1] ?? 0 };
  }
  const goal = Math.log(demandN);
  const excess = (depth: number) => Math.log(lowerN(model, depth) ?? 0) - goal;
  const exactMm = bracketedRoot(excess, grid[last] ?? above, above, 1e-7);
  const embedmentMm = Math.min(deepestMm, Math.ceil(exactMm / stepMm - 1e-6) * stepMm);
  return { kind: 'depth', exactMm, embedmentMm, lowerN: lowerN(model, embedmentMm) ?? 0 };
}
