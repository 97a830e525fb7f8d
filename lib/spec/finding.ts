import type { FigureSource } from '@/lib/materials/figure-source';
import type { Working } from '@/lib/materials/formula-card';
import type { InputName } from '@/lib/spec/input-name';
import type { RuleId } from '@/lib/spec/rule-id';
import type { TriedFix } from '@/lib/spec/spec-fix';
import type { SpecWaiver } from '@/lib/spec/spec-model';
import type { Quantity, QuantityUnit, Words } from '@/lib/units/quantity';

/** `not-judged`: something it needs is missing, or lies outside what can be estimated. Never a pass. */
export const VERDICTS = ['holds', 'short', 'not-judged'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** The subject's key of a finding about the whole model. */
export const MODEL_SUBJECT = 'model';

/** What a finding is about; the key is what a waiver names. */
export interface FindingSubject {
  /** `MODEL_SUBJECT`, or the anchor's id. */
  readonly key: string;
  readonly name: string;
}

export interface FindingFigure {
  readonly name: string;
  readonly quantity: Quantity;
}

/**
 * What a rule found, with everything that "why?" asks. Plain data that survives JSON; words and figures are in SI until
 * a screen prints them.
 */
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
  /** What to do, in words; always with `short`. */
  readonly advice: Words | null;
  /** Changes to the spec that were tried and make it hold, the least first; empty where it must be left to the maker. */
  readonly fixes: readonly TriedFix[];
  readonly formula: string;
  readonly source: FigureSource;
  readonly assumptions: readonly string[];
  /** Formula and inputs of the figure that decides, where there is one. */
  readonly working: Working | null;
  /** The waiver of this very revision that accepts a short. */
  readonly waiver: SpecWaiver | null;
}

/** Whether a finding keeps a model from holding: short, and nobody has accepted it. */
export function isOpenShort({ verdict, waiver }: Finding): boolean {
  return verdict === 'short' && waiver === null;
}

/** One figure of a finding. */
export function figure(name: string, value: number, unit: QuantityUnit): FindingFigure {
  return { name, quantity: { value, unit } };
}
