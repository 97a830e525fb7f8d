import type { NotJudged, WaitingFor } from '@/lib/batch/evaluation';
import type { PlannedOperation } from '@/lib/batch/plan';
import type { Instant } from '@/lib/units/instant';

/** How an operation is recorded: as attended work, joint by joint with a mix, or spread on pieces with a mix. */
export type RecordedAs = 'work' | 'joints' | 'coat';

/** Pieces of one action that wait for the same thing. */
export interface NotYetGroup {
  readonly pieces: readonly number[];
  readonly waiting: WaitingFor;
}

/** What every refusal about some of the pieces carries: the refused ones, and those the action would be right for. */
interface RefusedPieces {
  readonly pieces: readonly number[];
  readonly otherPieces: readonly number[];
}

/** Why an action from the bench is not taken in. Nothing has been written. */
export type Refusal =
  | { readonly code: 'bad-instant' }
  | { readonly code: 'in-future'; readonly at: Instant; readonly nowAt: Instant }
  | { readonly code: 'not-opened' }
  | { readonly code: 'already-opened' }
  | { readonly code: 'before-opening'; readonly openedAt: Instant }
  | { readonly code: 'bad-quantity' }
  | { readonly code: 'batch-finished'; readonly finishedAt: Instant; readonly bySeq: number }
  | { readonly code: 'not-finished' }
  /** Finishing while pieces still have operations open. */
  | ({ readonly code: 'open-pieces' } & RefusedPieces)
  /** Finishing while pieces of a quarantined mix are held. */
  | ({ readonly code: 'held-pieces' } & RefusedPieces)
  | { readonly code: 'not-quarantined'; readonly mixId: string }
  | { readonly code: 'unknown-operation'; readonly operationId: string }
  | { readonly code: 'wrong-operation-kind'; readonly operationId: string; readonly recordedAs: RecordedAs }
  | { readonly code: 'no-pieces' }
  | ({ readonly code: 'unknown-pieces'; readonly quantity: number } & RefusedPieces)
  | { readonly code: 'unknown-anchor'; readonly anchorIds: readonly string[] }
  | ({ readonly code: 'scrapped-pieces'; readonly bySeqs: readonly number[] } & RefusedPieces)
  | ({
      readonly code: 'already-done';
      readonly operationId: string;
      readonly bySeqs: readonly number[];
    } & RefusedPieces)
  | ({
      readonly code: 'blocked';
      readonly operationId: string;
      readonly byOperationIds: readonly string[];
    } & RefusedPieces)
  | ({
      readonly code: 'not-yet';
      readonly operationId: string;
      readonly groups: readonly NotYetGroup[];
    } & RefusedPieces)
  | ({
      readonly code: 'window-closed';
      readonly operationId: string;
      /** The operation whose film was to be coated. */
      readonly filmOperationId: string;
      readonly closedAt: Instant;
      readonly remedy: string | null;
    } & RefusedPieces)
  /** A remedy for a film that is not there. */
  | ({ readonly code: 'not-done'; readonly operationId: string } & RefusedPieces)
  | { readonly code: 'unknown-mix'; readonly mixId: string }
  | { readonly code: 'duplicate-mix'; readonly mixId: string; readonly bySeq: number }
  | { readonly code: 'mix-number-taken'; readonly number: number; readonly nextNumber: number; readonly bySeq: number }
  | { readonly code: 'mix-closed'; readonly mixId: string; readonly closedAt: Instant; readonly bySeq: number }
  | { readonly code: 'before-mix'; readonly mixId: string; readonly mixedAt: Instant }
  | { readonly code: 'closed-before-last-use'; readonly mixId: string; readonly lastUsedAt: Instant }
  | { readonly code: 'bad-figure'; readonly figure: 'massG' | 'temperatureC' | 'number' }
  | { readonly code: 'unknown-event'; readonly seq: number }
  | { readonly code: 'cannot-correct-opening' }
  | { readonly code: 'already-corrected'; readonly seq: number; readonly bySeq: number }
  /** A correction can be undone, not replaced: undo it, then correct the event it corrected. */
  | { readonly code: 'correction-only-undone'; readonly seq: number }
  | { readonly code: 'mix-id-changed'; readonly mixId: string }
  | { readonly code: 'mix-in-use'; readonly mixId: string; readonly bySeqs: readonly number[] }
  /** Later events would no longer make sense: correct those first. */
  | { readonly code: 'others-depend'; readonly bySeqs: readonly number[] };

export type RefusalCode = Refusal['code'];

/** What the maker is told although the action is taken in. */
export type ActionWarning =
  /** The mix was past the lower end of its pot life. */
  | { readonly code: 'late'; readonly mixId: string; readonly lowerAt: Instant; readonly centralAt: Instant }
  | { readonly code: 'pot-life-not-judged'; readonly mixId: string }
  | { readonly code: 'other-material'; readonly plannedMaterialId: string; readonly materialId: string }
  | { readonly code: 'over-mass-limit'; readonly massG: number; readonly maxMassG: number }
  /** The sheet or the temperature does not tell whether these pieces were ready: the maker's own judgement stands. */
  | { readonly code: 'not-judged'; readonly pieces: readonly number[]; readonly missing: NotJudged }
  /** Washed and sanded before the film can be sanded for sure. */
  | { readonly code: 'remedy-before-sand'; readonly pieces: readonly number[]; readonly waiting: WaitingFor };

export type Decision =
  | { readonly ok: true; readonly warnings: readonly ActionWarning[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** How an operation is recorded. A glue operation without anchors (two halves, a lip) is spread like a coat. */
export function recordedAs(operation: PlannedOperation): RecordedAs {
  if (operation.kind === 'work') return 'work';
  return operation.kind === 'glue' && operation.anchorIds.length > 0 ? 'joints' : 'coat';
}

/** A refusal as a decision. */
export function refused(refusal: Refusal): Decision {
  return { ok: false, refusal };
}

/** Taken in without anything to be said. */
export const ACCEPTED: Decision = { ok: true, warnings: [] };
