import { type Hole, woodBetween } from '@/lib/geometry/holes';
import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { placeMissing } from '@/lib/spec/place-missing';
import { mm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';

const ROUNDING_MM = 0.001;

/** Whether two holes meet inside the body, or leave too thin a wall. */
export const holesMeetRule: AnchorRule = {
  id: 'holes-meet',
  about: 'anchor',
  title: 'No two holes meet inside',
  formula: 'wood between the walls of two holes ≥ the least',
  source: chosen('The wood left under a hole is asked between two as well: glue of one must not run into the other'),
  assumptions: ['All holes lie in the middle plane of the body'],
  setFigure: ({ woodBelowMm }) => figure('Wood left between holes', woodBelowMm, 'mm'),
  check,
};

const isDrilled = ({ anchor }: AnchorFacts) => anchor.kind === 'twisted-wire';

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  const others = model.anchors.filter((other) => other !== facts && isDrilled(other));
  if (!isDrilled(facts) || others.length === 0) return null;
  const { hole } = facts.of;
  if (hole === null) return placeMissing(facts, model, holeMissing(facts));
  const nearest = nearestHole(hole, others);
  const { woodBelowMm } = model.context.settings;
  if (nearest !== null && nearest.woodMm < woodBelowMm - ROUNDING_MM) {
    const { woodMm, name } = nearest;
    return {
      verdict: 'short',
      words:
        woodMm < 0
          ? [`Its hole meets that of ${name} inside the body.`]
          : ['Only ', mm(woodMm), ` of wood are left between its hole and that of ${name}.`],
      figures: [figure('Wood between', woodMm, 'mm'), figure('Least asked', woodBelowMm, 'mm')],
      advice: ['Drill one of the two less deep, or move or turn it.'],
      fixes: () => shallower(facts, others, model),
    };
  }
  const unknown = others.filter((other) => other.of.hole === null);
  if (nearest === null || unknown.length > 0) {
    return { ...missing([...new Set(unknown.flatMap(holeMissing))]), words: ['Not all holes are known.'] };
  }
  return {
    verdict: 'holds',
    words: [mm(nearest.woodMm), ` of wood lie between its hole and the nearest other, that of ${nearest.name}.`],
    figures: [figure('Wood between', nearest.woodMm, 'mm'), figure('Least asked', woodBelowMm, 'mm')],
  };
}

function nearestHole(hole: Hole, others: readonly AnchorFacts[]) {
  let nearest: { readonly woodMm: number; readonly name: string } | null = null;
  for (const { anchor, of } of others) {
    if (of.hole === null) continue;
    const woodMm = woodBetween(hole, of.hole);
    if (nearest === null || woodMm < nearest.woodMm) nearest = { woodMm, name: anchor.name };
  }
  return nearest;
}

function holeMissing({ anchor, of }: AnchorFacts): InputName[] {
  return [
    ...(of.place === null ? (['place'] as const) : []),
    ...(anchor.bitDiameterMm === null ? (['bit'] as const) : []),
    ...(anchor.drillDepthMm === null ? (['drill-depth'] as const) : []),
  ];
}

/** The deepest hole, a whole number of increments, that keeps clear of the others and is not below the shop's least. */
function shallower(facts: AnchorFacts, others: readonly AnchorFacts[], { context }: ModelFacts): readonly SpecFix[] {
  const { incrementMm, leastEmbedmentMm, woodBelowMm } = context.settings;
  const { anchor, of } = facts;
  const { anchorId, embedmentMm, drillDepthMm } = anchor;
  if (of.hole === null || drillDepthMm === null || embedmentMm === null) return [];
  const deepest = Math.floor(drillDepthMm / incrementMm + 1e-9);
  for (let steps = deepest; steps * incrementMm >= leastEmbedmentMm - ROUNDING_MM && steps > deepest - 64; steps--) {
    const depthMm = steps * incrementMm;
    const nearest = nearestHole({ ...of.hole, depthMm }, others);
    if (nearest !== null && nearest.woodMm < woodBelowMm) continue;
    return [
      {
        way: 'shallower',
        words: ['Drill it ', mm(depthMm), ' deep.'],
        changes: [
          { kind: 'anchor', anchorId, set: { drillDepthMm: depthMm, embedmentMm: Math.min(embedmentMm, depthMm) } },
        ],
        size: (drillDepthMm - depthMm) / incrementMm,
        carries: null,
      },
    ];
  }
  return [];
}
