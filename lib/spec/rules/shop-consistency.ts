import type { FigureSource } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { drillFor } from '@/lib/spec/deepest-hole';
import { figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { count, mm, wireMm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import { isSameWay, type WireWay, wayOf } from '@/lib/spec/shop-use';
import type { SpecFix } from '@/lib/spec/spec-fix';
import type { Words } from '@/lib/units/quantity';

const SOURCE: FigureSource = {
  kind: 'common-practice',
  text: 'One wire, one bit, one glue, one depth: fewer ways to take the wrong one at the bench; no source',
};

/** Whether the same wire goes with the same bit, glue and depth in all models of the shop. */
export const shopConsistencyRule: AnchorRule = {
  id: 'shop-consistency',
  about: 'anchor',
  title: 'The same wire has the same bit, glue and depth in every model',
  formula: 'bit, glue and embedment = those that most anchors of the other models have with this wire',
  source: SOURCE,
  assumptions: ['A difference that is meant is waived, and then has no voice in what is usual'],
  setFigure: null,
  check,
};

function check({ anchor }: AnchorFacts, { model, context }: ModelFacts): Judgement | null {
  if (anchor.kind !== 'twisted-wire' || context.shopUse === null) return null;
  const way = wayOf(anchor);
  if (way === null || anchor.wire === null || anchor.wireDiameterMm === null) return missing(wayMissing(anchor));
  const usual = context.shopUse.usualWay(model.modelId, anchor);
  const figures = [figure('Bit', way.bitDiameterMm, 'wire-mm'), figure('Embedment', way.embedmentMm, 'mm')];
  if (usual === null) return { verdict: 'holds', words: ['No other model uses this wire.'], figures };
  const others: Words = [count(usual.anchors), usual.anchors === 1 ? ' other anchor' : ' other anchors'];
  if (isSameWay(way, usual.way)) {
    return { verdict: 'holds', words: ['Made as ', ...others, ' of this wire.'], figures };
  }
  return {
    verdict: 'short',
    words: ['Of this wire ', ...others, ' of the shop are made otherwise: ', ...difference(way, usual.way), '.'],
    figures: [
      ...figures,
      figure('Usual bit', usual.way.bitDiameterMm, 'wire-mm'),
      figure('Usual embedment', usual.way.embedmentMm, 'mm'),
    ],
    advice: ['Make it as the others, make the others as this one, or waive it with the reason.'],
    fixes: () => [asUsual(anchor, usual.way, context.settings.incrementMm)],
  };
}

function wayMissing({
  wire,
  wireDiameterMm,
  bitDiameterMm,
  adhesive,
  embedmentMm,
}: AnchorFacts['anchor']): InputName[] {
  return [
    ...(wire === null ? (['wire'] as const) : []),
    ...(wireDiameterMm === null ? (['wire-diameter'] as const) : []),
    ...(bitDiameterMm === null ? (['bit'] as const) : []),
    ...(adhesive === null ? (['adhesive'] as const) : []),
    ...(embedmentMm === null ? (['embedment'] as const) : []),
  ];
}

function difference(own: WireWay, usual: WireWay): Words {
  const parts: Words[] = [];
  if (!isSameWay({ ...own, bitDiameterMm: usual.bitDiameterMm }, own))
    parts.push(['bit ', wireMm(usual.bitDiameterMm)]);
  if (usual.adhesive.materialId !== own.adhesive.materialId) parts.push([`glue ${usual.adhesive.name}`]);
  if (!isSameWay({ ...own, embedmentMm: usual.embedmentMm }, own)) parts.push([mm(usual.embedmentMm), ' deep']);
  return parts.flatMap((part, i) => (i === 0 ? part : [', ', ...part]));
}

function asUsual(anchor: AnchorFacts['anchor'], way: WireWay, incrementMm: number): SpecFix {
  const { bitDiameterMm, adhesive, embedmentMm } = way;
  const deeper = Math.abs(embedmentMm - (anchor.embedmentMm ?? 0)) / incrementMm;
  const isDeeper = embedmentMm > (anchor.embedmentMm ?? 0);
  const drillDepthMm = isDeeper ? drillFor(embedmentMm, anchor.drillDepthMm) : embedmentMm;
  return {
    way: 'as-usual',
    words: ['Make it as the others: bit ', wireMm(bitDiameterMm), `, ${adhesive.name}, `, mm(embedmentMm), ' deep.'],
    changes: [
      { kind: 'anchor', anchorId: anchor.anchorId, set: { bitDiameterMm, adhesive, embedmentMm, drillDepthMm } },
    ],
    size: 1 + deeper,
    carries: null,
  };
}
