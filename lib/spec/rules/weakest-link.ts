import { derived } from '@/lib/materials/figure-source';
import type { FittingSheet } from '@/lib/materials/fitting-sheet';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { newtons } from '@/lib/spec/quantity-words';
import type { AnchorRule, Judgement } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';
import type { SpecMaterial } from '@/lib/spec/spec-model';
import { positiveOrNull } from '@/lib/spec/usable';
import { type ChainLink, type ChainLinkName, chainStrength } from '@/lib/strength/chain-strength';
import { poundsForce } from '@/lib/units/force-and-length';

const LINK_WORDS: Readonly<Record<ChainLinkName, string>> = {
  line: 'line',
  'split-ring': 'split ring',
  hook: 'hook',
  eye: 'eye',
  anchor: 'anchorage',
};
const STEP_N = poundsForce(1);

/** Whether the line goes before anything that is fixed to the lure. */
export const weakestLinkRule: AnchorRule = {
  id: 'weakest-link',
  about: 'anchor',
  title: 'The line is the weakest link',
  formula: 'overtest × label × knot ≤ lower value of ring, hook, eye and anchorage, each pulled straight',
  source: derived('Weakest link of a chain; the line as strong as it may come out, the others as weak'),
  assumptions: ['Rings and hooks by the strength that their makers state: there is no standard for either'],
  setFigure: null,
  check,
};

function check({ anchor, of }: AnchorFacts, model: ModelFacts): Judgement {
  const splitRing = fitting(anchor.splitRing);
  const hook = fitting(anchor.hook);
  const { linePullsN, links, weakestOther, isLineTheFuse } = chainStrength({
    line: model.line,
    splitRing,
    hook,
    anchor: of.strength,
  });
  const figures = links
    .filter(({ name }) => name !== 'line')
    .flatMap(({ name, lowerN }) => (lowerN === null ? [] : [figure(`The ${LINK_WORDS[name]} carries`, lowerN, 'N')]));
  const known = linePullsN === null ? figures : [figure('The line pulls at most', linePullsN, 'N'), ...figures];
  if (linePullsN !== null && weakestOther?.lowerN != null && weakestOther.lowerN < linePullsN) {
    return shortOf(weakestOther, weakestOther.lowerN, linePullsN, known, model);
  }
  if (isLineTheFuse !== true || linePullsN === null) {
    const missing: InputName[] = [];
    if (model.line === null) missing.push('line');
    if (splitRing !== null && splitRing.statedStrengthN === null) missing.push('ring-strength');
    if (hook !== null && hook.statedStrengthN === null) missing.push('hook-strength');
    missing.push(...of.missing.filter((input) => !missing.includes(input)));
    const unknown = links.filter(({ lowerN }) => lowerN === null).map(({ name }) => LINK_WORDS[name]);
    return { verdict: 'not-judged', words: [`Not known: ${unknown.join(', ')}.`], figures: known, missing };
  }
  return {
    verdict: 'holds',
    words: ['The line pulls ', newtons(linePullsN), ' at most and goes first.'],
    figures: known,
  };
}

function fitting(material: SpecMaterial<FittingSheet> | null) {
  return material === null ? null : { statedStrengthN: positiveOrNull(material.sheet?.statedStrengthN ?? null) };
}

function shortOf(
  { name }: ChainLink,
  lowerN: number,
  linePullsN: number,
  figures: Judgement['figures'],
  model: ModelFacts,
): Judgement {
  const what = LINK_WORDS[name];
  return {
    verdict: 'short',
    words: [`The ${what} goes at `, newtons(lowerN), ', before the line, which may pull ', newtons(linePullsN), '.'],
    figures: figures ?? [],
    advice: [`Take a stronger ${what}, or make the model for a lighter line.`],
    fixes: () => lighterLine(lowerN, linePullsN, model),
  };
}

function lighterLine(lowerN: number, linePullsN: number, { line, model }: ModelFacts): readonly SpecFix[] {
  if (line === null || model.line === null) return [];
  const labelN = Math.floor((line.labelN * lowerN) / linePullsN / STEP_N) * STEP_N;
  if (!(labelN > 0)) return [];
  return [
    {
      way: 'line',
      words: ['Make it for a line of ', newtons(labelN), '.'],
      changes: [{ kind: 'model', set: { line: { ...model.line, labelN } } }],
      size: 8 + 10 * (1 - labelN / line.labelN),
      carries: null,
    },
  ];
}
