import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import type { BondBelief } from '@/lib/strength/bond-belief';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

/** A glued anchor somewhere in the shop: of a model's revision or of an open batch. */
export interface AnchorInUse {
  /** For the caller to find it again. */
  readonly key: string;
  readonly design: TwistedWireAnchor;
  /** What its lower value must reach, factor of safety included, N; null: no demand is known. */
  readonly requiredN: number | null;
}

export type AnchorOutcome = 'holds' | 'short' | 'not-judged';

export interface MovedAnchor {
  readonly key: string;
  readonly before: { readonly outcome: AnchorOutcome; readonly lowerN: number | null };
  readonly after: { readonly outcome: AnchorOutcome; readonly lowerN: number | null };
  /** Whether the finding itself changes, or only its figure. */
  readonly isFlipped: boolean;
}

/**
 * The anchors whose lower value a new belief would move by more than a thousandth, those whose finding changes first.
 * Anchors of another combination are not handed in. Pulled at the angle of the design.
 */
export function movedAnchors(
  anchors: readonly AnchorInUse[],
  belief: BondBelief | null,
  settings: StrengthSettings,
): MovedAnchor[] {
  const moved = anchors.map(({ key, design, requiredN }): MovedAnchor => {
    const before = judged(design, requiredN, settings);
    const after = judged({ ...design, belief }, requiredN, settings);
    return { key, before, after, isFlipped: before.outcome !== after.outcome };
  });
  const changed = moved.filter(({ before, after, isFlipped }) => isFlipped || isMoved(before.lowerN, after.lowerN));
  return [...changed.filter(({ isFlipped }) => isFlipped), ...changed.filter(({ isFlipped }) => !isFlipped)];
}

function judged(
  design: TwistedWireAnchor,
  requiredN: number | null,
  settings: StrengthSettings,
): MovedAnchor['before'] {
  const { atAngle } = anchorStrength(design, settings);
  if (atAngle.kind === 'no-estimate') return { outcome: 'not-judged', lowerN: null };
  const { lowerN } = atAngle;
  if (requiredN === null) return { outcome: 'not-judged', lowerN };
  return { outcome: lowerN >= requiredN ? 'holds' : 'short', lowerN };
}

function isMoved(before: number | null, after: number | null): boolean {
  if (before === null || after === null) return before !== after;
  return Math.abs(after - before) > 1e-3 * before;
}
