import type { RuleId } from '@/lib/spec/rule-id';
import type { SpecAnchor, SpecBillLine, SpecLine, SpecWood } from '@/lib/spec/spec-model';
import type { Quantity, Words } from '@/lib/units/quantity';

/** What of an anchor a fix may change. */
export type AnchorPatch = Partial<
  Pick<
    SpecAnchor,
    | 'kind'
    | 'slantDeg'
    | 'wire'
    | 'wireDiameterMm'
    | 'twistPitchMm'
    | 'isEyeClosed'
    | 'bitDiameterMm'
    | 'drillDepthMm'
    | 'embedmentMm'
    | 'adhesive'
  >
>;

/** What of the model itself a fix may change. */
export interface ModelPatch {
  readonly wood?: SpecWood;
  readonly line?: SpecLine;
}

/** One change to a spec. */
export type SpecChange =
  | { readonly kind: 'anchor'; readonly anchorId: string; readonly set: AnchorPatch }
  | { readonly kind: 'model'; readonly set: ModelPatch }
  /** The line of the bill for a material, put in its place or added. */
  | { readonly kind: 'bill'; readonly line: SpecBillLine };

/** In what way a fix changes the spec: of one way only the least change that holds is offered. */
export const FIX_WAYS = [
  'close-eye',
  'deeper',
  'shallower',
  'drill',
  'square',
  'bit',
  'wire',
  'wire-and-depth',
  'line',
  'through',
  'wood',
  'as-usual',
  'bill',
] as const;
export type FixWay = (typeof FIX_WAYS)[number];

/** A change that makes a short hold. */
export interface SpecFix {
  readonly way: FixWay;
  /** What to do, as a sentence: `Glue it 5/8 in deep.` */
  readonly words: Words;
  readonly changes: readonly SpecChange[];
  /** How much of a change it is, by which fixes are ordered. Chosen scale: a sixteenth of an inch deeper is 1. */
  readonly size: number;
  /** What the anchor then carries (lower value), where the fix is about strength. */
  readonly carries: Quantity | null;
}

/** A fix that was tried on the model. */
export interface TriedFix extends SpecFix {
  /** What it would make short that is not short now; such fixes come last. */
  readonly makesShort: readonly { readonly ruleId: RuleId; readonly subjectName: string }[];
}
