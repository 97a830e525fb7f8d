import type { CoverFacts } from '@/lib/spec/cover-facts';
import { degrees, mm, newtons, percent } from '@/lib/spec/quantity-words';
import type { AnchorDesign } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { FULL_COVER_DIAMETERS } from '@/lib/strength/bond-factors';
import type { AnchorStrength } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { inches } from '@/lib/units/force-and-length';
import type { Words } from '@/lib/units/quantity';

/** The square shank that a slanted one is compared with: common practice's half inch. */
const COMPARED_MM = inches(1 / 2);
/** Below this a loss is no news. */
const WORTH_SAYING = 0.02;

/** What thin cover takes of a glued shank. */
export interface ThinCover {
  readonly lostShare: number;
  /** A straight pull of the shank as it is and of half an inch square in solid wood, lower values, where that is more. */
  readonly against: { readonly ownN: number; readonly squareN: number } | null;
}

/** Null where cover is full, takes next to nothing, or is not the matter. */
export function thinCover(
  design: AnchorDesign | null,
  strength: AnchorStrength | null,
  cover: CoverFacts | null,
  settings: StrengthSettings,
): ThinCover | null {
  if (design?.kind !== 'twisted-wire' || strength?.atAngle.kind !== 'estimate' || cover === null) return null;
  if (cover.leastMm >= FULL_COVER_DIAMETERS * cover.shankMm * (1 - WORTH_SAYING)) return null;
  const inSolid = anchorStrength({ ...design, cover: null }, settings).atAngle;
  if (inSolid.kind !== 'estimate') return null;
  const lostShare = 1 - strength.atAngle.lowerN / inSolid.lowerN;
  if (!(lostShare > WORTH_SAYING)) return null;
  if (design.embedmentMm <= COMPARED_MM || strength.straight.kind !== 'estimate') return { lostShare, against: null };
  const half = { ...design, cover: null, embedmentMm: COMPARED_MM, loadAngleDeg: 0 };
  const square = anchorStrength(half, settings).straight;
  const ownN = strength.straight.lowerN;
  const isMore = square.kind === 'estimate' && square.lowerN > ownN;
  return { lostShare, against: isMore ? { ownN, squareN: square.lowerN } : null };
}

/**
 * Why a glued shank is weaker than its length says: how much thin cover takes, where it is thinnest, and what half an
 * inch square in solid wood would carry in a straight pull.
 */
export function thinCoverWords(
  { lostShare, against }: ThinCover,
  cover: CoverFacts,
  lengthMm: number,
  slantDeg: number,
) {
  const words: Words = [
    ' Thin cover takes ',
    percent(100 * lostShare),
    ' of it: cover is least at a depth of ',
    mm(cover.atDepthMm),
    ', and counts there as ',
    mm(cover.leastMm),
    ', where ',
    mm(FULL_COVER_DIAMETERS * cover.shankMm),
    ' would be full cover.',
  ];
  if (against === null) return words;
  const { ownN, squareN } = against;
  return [
    ...words,
    ...(slantDeg === 0 ? [' Its '] : [' Slanted by ', degrees(Math.abs(slantDeg)), ', its ']),
    mm(lengthMm),
    ' carry ',
    newtons(ownN),
    ' in a straight pull; ',
    mm(COMPARED_MM),
    ' square in solid wood would carry ',
    newtons(squareN),
    '.',
  ];
}
