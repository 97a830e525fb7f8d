import type { WaterRating } from '@/lib/materials/adhesive-strength-sheet';
import { type FigureSource, OWN_FIGURE } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { type FindingFigure, figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { celsius, wireMm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import { sizeOrNull } from '@/lib/spec/usable';
import type { Words } from '@/lib/units/quantity';

const ROUNDING_MM = 0.0005;
const SOURCE: FigureSource = {
  kind: 'data-sheet',
  text: "The adhesive's data sheet, as entered; it has the last word",
};

/** Whether the glue is made for the gap, for water, and for the warmth that a lure meets. */
export const adhesiveSuitsRule: AnchorRule = {
  id: 'adhesive-suits',
  about: 'anchor',
  title: 'The glue suits gap, water and warmth',
  formula: 'gap ≤ widest gap of the sheet; made for immersion; service temperature ≤ warmest of the sheet',
  source: SOURCE,
  assumptions: ['A glue for splashes will do behind a sealed coat, as long as that is whole'],
  setFigure: ({ serviceTemperatureC }) => figure('Warmest a lure is kept', serviceTemperatureC, 'degC'),
  check,
};

/** What speaks against the glue, for it with a caution, and what is not known. */
interface Answer {
  readonly against: Words | null;
  readonly caution: Words | null;
  readonly missing: readonly InputName[];
  readonly figures: readonly FindingFigure[];
}

const FINE: Answer = { against: null, caution: null, missing: [], figures: [] };

function check({ anchor }: AnchorFacts, { context }: ModelFacts): Judgement | null {
  const { kind, adhesive } = anchor;
  if (kind !== 'twisted-wire') return null;
  if (adhesive === null) return missing(['adhesive']);
  const { sheet, name } = adhesive;
  if (sheet === null) return missing(['adhesive-figures']);
  const answers = [
    ofGap(anchor, sizeOrNull(sheet.maxGapMm)),
    ofWater(sheet.water ?? null),
    ofWarmth(context.settings.serviceTemperatureC, sheet.maxServiceC ?? null),
  ];
  const against = answers.flatMap((answer) => (answer.against === null ? [] : [answer.against]));
  const figures = answers.flatMap((answer) => answer.figures);
  const cautions = answers.flatMap((answer) => (answer.caution === null ? [] : [answer.caution]));
  if (against.length > 0) {
    return {
      verdict: 'short',
      words: [`${name}: `, ...against.flatMap((words, i) => (i === 0 ? words : ['; ', ...words])), '.'],
      figures,
      cautions,
      advice: ['Take an adhesive that its data sheet says is made for this.'],
    };
  }
  const unknown = [...new Set(answers.flatMap((answer) => answer.missing))];
  if (unknown.length > 0) return { ...missing(unknown), figures, cautions };
  const own = [sheet.sources.maxGapMm, sheet.sources.water, sheet.sources.maxServiceC].some(
    (source) => source === undefined || source.kind === OWN_FIGURE.kind,
  );
  return {
    verdict: 'holds',
    words: [`${name} is made for this gap, water and warmth`, own ? ", by the shop's own figures." : '.'],
    figures,
    cautions,
  };
}

function ofGap({ wireDiameterMm, bitDiameterMm }: AnchorFacts['anchor'], widestMm: number | null): Answer {
  if (wireDiameterMm === null || bitDiameterMm === null || widestMm === null) {
    return {
      ...FINE,
      missing: [
        ...(wireDiameterMm === null ? (['wire-diameter'] as const) : []),
        ...(bitDiameterMm === null ? (['bit'] as const) : []),
        ...(widestMm === null ? (['adhesive-figures'] as const) : []),
      ],
    };
  }
  const gap = Math.max(0, 0.5 * bitDiameterMm - wireDiameterMm);
  const figures = [figure('Gap all round', gap, 'wire-mm'), figure('Widest gap', widestMm, 'wire-mm')];
  if (gap <= widestMm + ROUNDING_MM) return { ...FINE, figures };
  return { ...FINE, figures, against: ['the gap is ', wireMm(gap), ', it fills ', wireMm(widestMm), ' at most'] };
}

function ofWater(water: WaterRating | null): Answer {
  switch (water) {
    case 'immersion':
      return FINE;
    case 'splash':
      return { ...FINE, caution: ['It is made for splashes, not to lie in water: the coat must stay whole.'] };
    case 'none':
      return { ...FINE, against: ['it is not made for water'] };
    case null:
      return { ...FINE, missing: ['adhesive-figures'] };
  }
}

function ofWarmth(serviceC: number, warmestC: number | null): Answer {
  if (warmestC === null || !Number.isFinite(warmestC)) return { ...FINE, missing: ['adhesive-figures'] };
  const figures = [
    figure('Warmest a lure is kept', serviceC, 'degC'),
    figure('Warmest by its sheet', warmestC, 'degC'),
  ];
  if (serviceC <= warmestC) return { ...FINE, figures };
  return { ...FINE, figures, against: ['it holds to ', celsius(warmestC), ', lures are kept at ', celsius(serviceC)] };
}
