import type { CutBar } from '@/lib/bom/cut-list';
import type { Arrangement } from '@/lib/mixing/arrangement';
import type { COMMON_WASTE, WeighedUse } from '@/lib/mixing/waste';

/** What the maker chooses before a glue-up. */
export interface PrepareChoices {
  readonly arrangement: Arrangement;
  readonly secondsPerJoint: number;
  readonly secondsPerCoat: number;
  /** Setting joints from the same cup at once. */
  readonly people: number;
  readonly stirSeconds: number;
  /** The warmer of the room and the parts, degC. */
  readonly temperatureC: number;
  /** Display step of the scale, g. */
  readonly scaleStepG: number;
  /** Film of one coat, mm. */
  readonly filmMm: number;
  readonly kerfMm: number;
  /** From this length on an offcut is kept. */
  readonly reuseMm: number;
  /** Length of one rod where a lot of wire is a bundle; null: every lot is one coil. */
  readonly rodMm: number | null;
  /** How far the wire runs round an eye: 360 for a full ring. */
  readonly loopDeg: number;
  /** Both ends of a wire together, gripped while bending and cut off, mm. */
  readonly gripMm: number;
  /** Turns that close the first and the last eye of a through-wire. */
  readonly wrapTurns: number;
}

/** Chosen, or common practice without a source: what stands in the form before anybody changed it. */
export const USUAL_CHOICES: Omit<PrepareChoices, 'temperatureC'> = {
  arrangement: 'spread',
  secondsPerJoint: 45,
  secondsPerCoat: 180,
  people: 1,
  stirSeconds: 120,
  scaleStepG: 0.1,
  filmMm: 0.2,
  kerfMm: 0,
  reuseMm: 150,
  rodMm: null,
  // Common practice, no source: a full ring, 8 to 15 mm to grip at each end, three turns.
  loopDeg: 360,
  gripMm: 20,
  wrapTurns: 3,
};

/** Share of the lower pot life that is planned with, what stays in the cup, and the ends of a wire. Chosen. */
export const USABLE_SHARE = 0.8;
export const CUP_LOSS_G = 0.5;
export const END_TRIM_MM = 5;
/** Wires are cut to a step of this, rounded up. Chosen. */
export const CUT_STEP_MM = 0.5;

/** One cup on the card. */
export interface CardMix {
  /** From 1, within its operation. */
  readonly number: number;
  readonly partAG: number;
  /** 0 for a one-part product. */
  readonly partBG: number;
  readonly massG: number;
  readonly ratioError: number;
  /** The lower value; null where the product has none. */
  readonly potLifeMinutes: number | null;
  readonly busyMinutes: number;
  readonly uses: readonly { readonly piece: number; readonly anchorId: string | null }[];
}

/** Why there is no card: what to enter or to change. Codes are told in words by the screen. */
export type CardObstacle =
  | 'no-material'
  | 'no-sheet'
  | 'no-ratio'
  | 'volume-ratio-without-densities'
  | 'no-pot-life'
  | 'points-contradict'
  | 'cannot-weigh'
  | 'cup-too-heavy'
  | 'too-slow'
  | 'piece-too-slow'
  | 'anchor-figures'
  | 'no-body'
  | 'no-bill-line';

export type WasteKind = keyof typeof COMMON_WASTE;

export interface OperationCard {
  readonly operationId: string;
  readonly materialId: string | null;
  readonly aPerB: number | null;
  readonly tolerance: number | null;
  readonly waste: number;
  /** What waste the factor is; null: the bill says what is needed, waste and all. */
  readonly wasteKind: WasteKind | null;
  /** Weighed glue-ups or coats behind an own factor; 0: the usual figure. */
  readonly wasteCount: number;
  /** What all joints or coats of the card take by geometry, without waste, g. */
  readonly netG: number;
  readonly mixes: readonly CardMix[];
  /** Null: the mixes are planned. */
  readonly obstacle: CardObstacle | null;
  /** Anchors whose figures are missing. */
  readonly anchorIds: readonly string[];
}

/** The wire of one material: how each length in stock is cut. */
export interface WireCut {
  readonly materialId: string;
  /** For each anchor, the wire of one eye as it is cut. */
  readonly wires: readonly { readonly anchorId: string; readonly cutMm: number; readonly count: number }[];
  readonly bars: readonly CutBar[];
  readonly isProven: boolean;
  readonly leastMm: number;
  /** `too-long` and `not-enough` as a cut list says them. Null: planned. */
  readonly obstacle: 'too-long' | 'not-enough' | null;
  readonly missingMm: number;
}

/** The cups of one card as they were weighed afterwards. */
export interface WeighedCard extends WeighedUse {
  readonly operationId: string;
  readonly kind: WasteKind;
}

/** What a press of "Prepare" made: it stays as it is until the next. */
export interface Preparation {
  readonly choices: PrepareChoices;
  readonly cards: readonly OperationCard[];
  readonly cuts: readonly WireCut[];
  /** Anchors whose wire cannot be told. */
  readonly wireUnknown: readonly string[];
  /** What was weighed back after the cards, one for each at most. */
  readonly weighed: readonly WeighedCard[];
}
