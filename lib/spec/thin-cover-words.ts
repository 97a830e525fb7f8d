import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { degrees, mm, newtons, percent } from '@/lib/spec/quantity-words';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { FULL_COVER_DIAMETERS } from '@/lib/strength/bond-factors';
import { inches } from '@/lib/units/force-and-length';
import type { Words } from '@/lib/units/quantity';

/** The square shank that a slanted one is compared with: common practice's half inch. */
const COMPARED_MM = inches(1 / 2);
/** Below this a loss is no news. */
const WORTH_SAYING = 0.02;

/**
 * Why a glued shank is weaker than its length says, when thin cover is why: how much the cover takes, where it is
 * thinnest, and what half an inch square in solid wood would carry in a straight pull. Nothing otherwise.
 */
export function thinCoverWords({ of: { design, strength, shankCover, place } }: AnchorFacts, model: ModelFacts): Words {
  if (design?.kind !== 'twisted-wire' || strength?.atAngle.kind !== 'estimate' || shankCover === null) return [];
  if (shankCover.leastMm >= FULL_COVER_DIAMETERS * shankCover.shankMm) return [];
  const settings = model.context.settings.strength;
  const inSolid = anchorStrength({ ...design, cover: null }, settings).atAngle;
  if (inSolid.kind !== 'estimate') return [];
  const lost = 1 - strength.atAngle.lowerN / inSolid.lowerN;
  if (!(lost > WORTH_SAYING)) return [];
  const words: Words = [
    ' Thin cover takes ',
    percent(100 * lost),
    ' of it: at a depth of ',
    mm(shankCover.atDepthMm),
    ' only ',
    mm(shankCover.leastMm),
    ' from the middle of the shank to the skin, where ',
    mm(FULL_COVER_DIAMETERS * shankCover.shankMm),
    ' would be full cover.',
  ];
  if (place === null || place.slantDeg === 0 || design.embedmentMm <= COMPARED_MM) return words;
  const square = anchorStrength(
    { ...design, cover: null, embedmentMm: COMPARED_MM, loadAngleDeg: 0 },
    settings,
  ).straight;
  if (strength.straight.kind !== 'estimate' || square.kind !== 'estimate') return words;
  if (square.lowerN <= strength.straight.lowerN) return words;
  return [
    ...words,
    ' Slanted by ',
    degrees(Math.abs(place.slantDeg)),
    ', its ',
    mm(design.embedmentMm),
    ' carry ',
    newtons(strength.straight.lowerN),
    ' in a straight pull; ',
    mm(COMPARED_MM),
    ' square in solid wood would carry ',
    newtons(square.lowerN),
    '.',
  ];
}
