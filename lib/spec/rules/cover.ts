import { fromMemory } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { CoverFacts } from '@/lib/spec/cover-facts';
import { figure } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { placeMissing } from '@/lib/spec/place-missing';
import { mm } from '@/lib/spec/quantity-words';
import type { AnchorRule, Judgement } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';
import { FULL_COVER_DIAMETERS, LEAST_COVER_DIAMETERS } from '@/lib/strength/bond-factors';
import type { Quantity } from '@/lib/units/quantity';

/** A sheet prints cover to a hundredth of a millimetre. */
const ROUNDING_MM = 0.001;
/** Share of full cover that counts as full: the slope of a rounded body at the mouth takes as much. Chosen. */
const FULL_SHARE = 0.97;

/** Whether there is wood enough round each shank that it does not split out through the skin. */
export const coverRule: AnchorRule = {
  id: 'cover',
  about: 'anchor',
  title: 'Every shank has wood enough round it',
  formula: `cover ≥ ${LEAST_COVER_DIAMETERS} d (full from ${FULL_COVER_DIAMETERS} d on), d the wider of hole and pair`,
  source: fromMemory('2.5 d of codes for glued-in rods; 1.5 d the least of small inserts pulled straight'),
  assumptions: [
    'Cover is the distance from the middle of the shank to the nearest skin, in any direction',
    'At the mouth every shank is near the skin: there it is judged as a square one in endless wood would be',
  ],
  setFigure: null,
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  const { anchor, of } = facts;
  if (anchor.kind === 'through-wire') return null;
  const cover = of.shankCover;
  if (cover === null) return placeMissing(facts, model, coverInputs(facts));
  const { leastMm, shankMm, atDepthMm } = cover;
  const least = LEAST_COVER_DIAMETERS * shankMm;
  const full = FULL_COVER_DIAMETERS * shankMm;
  const figures = [
    figure('Least cover', leastMm, 'mm'),
    figure('at a depth of', atDepthMm, 'mm'),
    figure('Least asked', least, 'mm'),
    figure('Full cover', full, 'mm'),
  ];
  const where: readonly (string | Quantity)[] = [mm(leastMm), ' at a depth of ', mm(atDepthMm)];
  if (leastMm >= FULL_SHARE * full)
    return { verdict: 'holds', words: ['Full cover, ', mm(full), ' and more.'], figures };
  if (leastMm >= least - ROUNDING_MM) {
    return {
      verdict: 'holds',
      words: ['Cover is ', ...where, '.'],
      figures,
      cautions: [['Below full cover (', mm(full), ') the estimate is reduced.']],
    };
  }
  return {
    verdict: 'short',
    words: ['Cover is only ', ...where, '; ', mm(least), ' is the least.'],
    figures,
    advice: ['Drill square to the body, or shallower, or where the body is thicker.'],
    fixes: () => [...squared(facts), ...shallower(facts, cover, model)],
  };
}

function coverInputs({ anchor }: AnchorFacts) {
  const { kind, embedmentMm, wireDiameterMm, bitDiameterMm, screwEye } = anchor;
  const isGlued = kind === 'twisted-wire';
  return [
    ...(embedmentMm === null ? (['embedment'] as const) : []),
    ...(isGlued && wireDiameterMm === null ? (['wire-diameter'] as const) : []),
    ...(isGlued && bitDiameterMm === null ? (['bit'] as const) : []),
    ...(!isGlued && screwEye === null ? (['screw-eye'] as const) : []),
    ...(!isGlued && screwEye !== null ? (['screw-eye-figures'] as const) : []),
  ];
}

function squared({ anchor }: AnchorFacts): readonly SpecFix[] {
  if (anchor.slantDeg === null || anchor.slantDeg === 0) return [];
  const words = ['Drill it square to the body.'];
  const { anchorId } = anchor;
  return [
    { way: 'square', words, changes: [{ kind: 'anchor', anchorId, set: { slantDeg: 0 } }], size: 2, carries: null },
  ];
}

/** As deep as the cover stays the least asked: for a shank that comes out thin at its end. */
function shallower({ anchor }: AnchorFacts, cover: CoverFacts, { context }: ModelFacts): readonly SpecFix[] {
  const { incrementMm, leastEmbedmentMm } = context.settings;
  const { anchorId, embedmentMm } = anchor;
  if (embedmentMm === null || anchor.kind !== 'twisted-wire') return [];
  const firstThin = cover.cellsMm.findIndex((cell) => cell < LEAST_COVER_DIAMETERS * cover.shankMm);
  const reach = firstThin < 0 ? embedmentMm - incrementMm : (firstThin - 1) * cover.stepMm;
  const depth = Math.floor(Math.min(reach, embedmentMm - 0.001) / incrementMm) * incrementMm;
  if (!(depth > 0) || depth < leastEmbedmentMm - 0.001) return [];
  return [
    {
      way: 'shallower',
      words: ['Glue it ', mm(depth), ' deep, and drill no deeper.'],
      changes: [{ kind: 'anchor', anchorId, set: { embedmentMm: depth, drillDepthMm: depth } }],
      size: (embedmentMm - depth) / incrementMm,
      carries: null,
    },
  ];
}
