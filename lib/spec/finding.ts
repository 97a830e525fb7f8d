import type { FigureSource } from '@/lib/materials/figure-source';
import type { Working } from '@/lib/materials/formula-card';
import type { InputName } from '@/lib/spec/input-name';
import type { RuleId } from '@/lib/spec/rule-id';
import type { SpecWaiver } from '@/lib/spec/spec-model';
import type { Quantity, Words } from '@/lib/units/quantity';

/** `not-judged`: something it needs is missing, or lies outside what can be estimated. Never a pass. */
export const VERDICTS = ['holds', 'short', 'not-judged'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What a finding is about; the key is what a waiver names. */
export interface FindingSubject {
  /** `model`, or the anchor's id. */
  readonly key: string;
  readonly name: string;
}

export interface FindingFigure {
  readonly name: string;
  readonly quantity: Quantity;
}

/** What a rule found, with everything that "why?" asks. Words and figures are in SI until a screen prints them. */
export interface Finding {
  readonly ruleId: RuleId;
  readonly subject: FindingSubject;
  readonly verdict: Verdict;
  readonly words: Words;
  readonly figures: readonly FindingFigure[];
  /** Things to mind although it holds. */
  readonly cautions: readonly Words[];
  /** What it needed and did not find; only with `not-judged`. */
  readonly missing: readonly InputName[];
  /** What would change it; always with `short`. */
  readonly fix: Words | null;
  readonly formula: string;
  readonly source: FigureSource;
  readonly working: Working | null;
  /** The waiver of this very revision that accepts a short. */
  readonly waiver: SpecWaiver | null;
}
