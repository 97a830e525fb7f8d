import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import type { NoEstimateReason } from '@/lib/strength/estimate';
import type { FailureWay } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { GLUED_WIRE_BOX } from '@/lib/strength/validity-box';

/** What is asked of a depth. */
export interface EmbedmentQuestion {
  /** Cover must reach down to `greatestMm`. Its own embedment is not read. */
  readonly design: TwistedWireAnchor;
  /** Lower value that the anchor must carry at its load's angle, factor included. */
  readonly neededN: number;
  /** Depths are whole multiples of this. */
  readonly incrementMm: number;
  /** Deepest that the body has room for. */
  readonly greatestMm: number;
}

export type LeastEmbedment =
  | { readonly ok: true; readonly embedmentMm: number; readonly steps: number; readonly lowerN: number }
  /** The body has no room for the depth that would hold, or for any that can be estimated. */
  | { readonly ok: false; readonly code: 'impossible-in-this-body'; readonly bestN: number | null }
  /** However deep: something else than the depth governs. */
  | { readonly ok: false; readonly code: 'depth-does-not-help'; readonly bestN: number; readonly governs: FailureWay }
  | { readonly ok: false; readonly code: 'no-estimate'; readonly reasons: readonly NoEstimateReason[] };

/** A depth that misses a multiple by rounding still is that multiple. */
const ROUNDING = 1e-9;

/**
 * The least depth, a whole multiple of the increment, at which an anchor holds: exact, because strength never falls
 * with depth. Searched by halving among the depths that can be estimated and that the body has room for.
 *
 * Throws RangeError unless increment and needed load are positive.
 */
export function leastEmbedment(question: EmbedmentQuestion, settings: StrengthSettings): LeastEmbedment {
  const { design, neededN, incrementMm, greatestMm } = question;
  if (!(incrementMm > 0 && neededN > 0)) {
    throw new RangeError(`leastEmbedment needs a positive increment and load, got ${incrementMm}, ${neededN}`);
  }
  const { low: shallowest, high: deepest } = GLUED_WIRE_BOX.embedmentMm;
  const first = Math.ceil(shallowest / incrementMm - ROUNDING);
  const ofBox = Math.floor(deepest / incrementMm + ROUNDING);
  const ofBody = Math.floor(greatestMm / incrementMm + ROUNDING);
  const last = Math.min(ofBox, ofBody);
  if (!(last >= first)) return { ok: false, code: 'impossible-in-this-body', bestN: null };
  const at = (steps: number) =>
    anchorStrength({ ...design, embedmentMm: steps * incrementMm, voidMm: 0 }, settings).atAngle;
  const best = at(last);
  if (best.kind === 'no-estimate') return { ok: false, code: 'no-estimate', reasons: best.reasons };
  if (best.lowerN < neededN) {
    if (ofBody < ofBox) return { ok: false, code: 'impossible-in-this-body', bestN: best.lowerN };
    return { ok: false, code: 'depth-does-not-help', bestN: best.lowerN, governs: best.governs };
  }
  let low = first - 1;
  let high = last;
  let lowerN = best.lowerN;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const result = at(middle);
    if (result.kind === 'estimate' && result.lowerN >= neededN) {
      high = middle;
      lowerN = result.lowerN;
    } else {
      low = middle;
    }
  }
  return { ok: true, embedmentMm: high * incrementMm, steps: high, lowerN };
}
