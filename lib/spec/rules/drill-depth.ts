import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { mm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';

const ROUNDING_MM = 0.001;

/** Whether the hole is as deep as the shank is long. */
export const drillDepthRule: AnchorRule = {
  id: 'drill-depth',
  about: 'anchor',
  title: 'The hole is as deep as the shank, and no deeper',
  formula: 'embedment ≤ depth drilled ≤ embedment + slack',
  source: chosen('A void under the end traps air and drinks glue (voids at the far end did not weaken rods, read)'),
  assumptions: ['The strength counts the glued length, not the depth drilled'],
  setFigure: ({ drillSlackMm }) => figure('Slack under the shank', drillSlackMm, 'mm'),
  check,
};

function check({ anchor }: AnchorFacts, { context }: ModelFacts): Judgement | null {
  const { kind, anchorId, embedmentMm, drillDepthMm } = anchor;
  if (kind !== 'twisted-wire') return null;
  if (embedmentMm === null || drillDepthMm === null) {
    return missing([
      ...(embedmentMm === null ? (['embedment'] as const) : []),
      ...(drillDepthMm === null ? (['drill-depth'] as const) : []),
    ]);
  }
  const { drillSlackMm, incrementMm } = context.settings;
  const below = drillDepthMm - embedmentMm;
  const figures = [figure('Drilled', drillDepthMm, 'mm'), figure('Embedment', embedmentMm, 'mm')];
  const isShallow = below < -ROUNDING_MM;
  if (!isShallow && below <= drillSlackMm + ROUNDING_MM) {
    return { verdict: 'holds', words: ['Drilled ', mm(drillDepthMm), ' for ', mm(embedmentMm), ' of shank.'], figures };
  }
  const drillTo = {
    way: 'drill' as const,
    words: ['Drill it ', mm(embedmentMm), ' deep.'],
    changes: [{ kind: 'anchor' as const, anchorId, set: { drillDepthMm: embedmentMm } }],
    size: Math.abs(below) / incrementMm,
    carries: null,
  };
  const glueTo = {
    way: 'deeper' as const,
    words: ['Glue the shank ', mm(drillDepthMm), ' deep, to the bottom.'],
    changes: [{ kind: 'anchor' as const, anchorId, set: { embedmentMm: drillDepthMm } }],
    size: 1 + Math.abs(below) / incrementMm,
    carries: null,
  };
  return {
    verdict: 'short',
    words: isShallow
      ? ['Drilled ', mm(drillDepthMm), ', but the shank is to go ', mm(embedmentMm), ' deep: it stands on the bottom.']
      : ['A void of ', mm(below), ' is left under the shank.'],
    figures,
    advice: isShallow ? ['Drill deeper.'] : ['Drill less deep, or glue the shank to the bottom.'],
    fixes: () => (isShallow ? [drillTo] : [drillTo, glueTo]),
  };
}
