import type { FigureSource } from '@/lib/materials/figure-source';
import type { Working } from '@/lib/materials/formula-card';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { FindingFigure, Verdict } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import type { RuleId } from '@/lib/spec/rule-id';
import type { SpecFix } from '@/lib/spec/spec-fix';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import type { Words } from '@/lib/units/quantity';

/** What a check says; the engine adds rule, subject, source and waiver. */
export interface Judgement {
  readonly verdict: Verdict;
  readonly words: Words;
  readonly figures?: readonly FindingFigure[];
  readonly cautions?: readonly Words[];
  readonly missing?: readonly InputName[];
  /** What to do; always with `short`. */
  readonly advice?: Words;
  /** Candidates; the engine keeps those that make it hold. */
  readonly fixes?: () => readonly SpecFix[];
  readonly working?: Working | null;
}

interface RuleCard {
  readonly id: RuleId;
  /** As a heading: what must be so. */
  readonly title: string;
  readonly formula: string;
  readonly source: FigureSource;
  readonly assumptions: readonly string[];
  /** The shop's figure that it judges by; null: none can be set. */
  readonly setFigure: ((settings: SpecSettings) => FindingFigure) | null;
}

/** A rule about each anchor; null: it does not apply to this one. */
export interface AnchorRule extends RuleCard {
  readonly about: 'anchor';
  readonly check: (anchor: AnchorFacts, model: ModelFacts) => Judgement | null;
}

/** A rule about the whole model; null: it does not apply. */
export interface ModelRule extends RuleCard {
  readonly about: 'model';
  readonly check: (model: ModelFacts) => Judgement | null;
}

export type Rule = AnchorRule | ModelRule;

/** Not judged for want of inputs. */
export function missing(inputs: readonly InputName[]): Judgement {
  return { verdict: 'not-judged', words: [], missing: inputs };
}
