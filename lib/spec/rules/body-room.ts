import { woodBelow } from '@/lib/geometry/holes';
import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { deepestHoleMm } from '@/lib/spec/deepest-hole';
import { figure } from '@/lib/spec/finding';
import { runThrough } from '@/lib/spec/fix-kinds';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { placeMissing } from '@/lib/spec/place-missing';
import { mm } from '@/lib/spec/quantity-words';
import { SHANK_REFUSAL_WORDS } from '@/lib/spec/reason-words';
import type { AnchorRule, Judgement } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';

const ROUNDING_MM = 0.001;

/** Whether the body is long and thick enough for the hole. */
export const bodyRoomRule: AnchorRule = {
  id: 'body-room',
  about: 'anchor',
  title: 'The body has room for the hole',
  formula: 'wood between the bottom of the hole and the skin ≥ the least',
  source: chosen('An eighth of an inch: what a drill may wander and a bottom may be dished'),
  assumptions: ['The drill goes where the drawing has it'],
  setFigure: ({ woodBelowMm }) => figure('Wood left under a hole', woodBelowMm, 'mm'),
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  const { anchor, of } = facts;
  if (anchor.kind === 'through-wire') return null;
  if (of.pathRefusal !== null) {
    return {
      verdict: 'short',
      words: [`There is no such hole in this body: ${SHANK_REFUSAL_WORDS[of.pathRefusal]}.`],
      advice: ['Move the hole, or turn it.'],
    };
  }
  const depth = depthOf(facts);
  if (of.path === null || depth === null) {
    return placeMissing(
      facts,
      model,
      depth === null ? [anchor.kind === 'screw-eye' ? 'embedment' : 'drill-depth'] : [],
    );
  }
  const { woodBelowMm } = model.context.settings;
  const below = woodBelow({ path: of.path, depthMm: depth, diameterMm: 0 });
  const figures = [
    figure('Hole', depth, 'mm'),
    figure('Wood there', of.path.throughMm, 'mm'),
    figure('Wood left under it', below, 'mm'),
    figure('Least asked', woodBelowMm, 'mm'),
  ];
  if (below >= woodBelowMm - ROUNDING_MM) {
    return { verdict: 'holds', words: [mm(below), ' of wood are left under the hole.'], figures };
  }
  return {
    verdict: 'short',
    words:
      below <= 0
        ? ['The hole comes through: it is ', mm(depth), ' deep, the wood there ', mm(of.path.throughMm), '.']
        : ['Only ', mm(below), ' of wood are left under the hole.'],
    figures,
    advice: ['Drill less deep, move or turn the hole, or run the wire through.'],
    fixes: () => [...shallower(facts, model), ...runThrough(facts)],
  };
}

/** A screw eye makes its own hole where none is drilled. */
function depthOf({ anchor }: AnchorFacts): number | null {
  const { kind, drillDepthMm, embedmentMm } = anchor;
  if (kind !== 'screw-eye') return drillDepthMm;
  return embedmentMm === null ? null : Math.max(embedmentMm, drillDepthMm ?? 0);
}

function shallower(facts: AnchorFacts, { context }: ModelFacts): readonly SpecFix[] {
  const { anchorId, embedmentMm, drillDepthMm } = facts.anchor;
  const room = deepestHoleMm(facts, context.settings);
  const { incrementMm } = context.settings;
  if (room === null || embedmentMm === null) return [];
  const depth = Math.floor(room / incrementMm + 1e-9) * incrementMm;
  if (!(depth > 0)) return [];
  const glued = Math.min(embedmentMm, depth);
  const set = drillDepthMm === null ? { embedmentMm: glued } : { embedmentMm: glued, drillDepthMm: depth };
  return [
    {
      way: 'shallower',
      words: ['Drill it ', mm(depth), ' deep.'],
      changes: [{ kind: 'anchor', anchorId, set }],
      size: Math.max(0, (drillDepthMm ?? embedmentMm) - depth) / incrementMm,
      carries: null,
    },
  ];
}
