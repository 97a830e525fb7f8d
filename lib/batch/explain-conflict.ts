import type { Refusal } from '@/lib/batch/decision';
import type { BatchEvent, BatchEventBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';

/** What somebody else did in the meantime, for "someone else just ...". */
export interface Conflict {
  readonly seq: number;
  readonly personId: string | null;
  readonly at: Instant;
  readonly recordedAt: Instant;
  readonly body: BatchEventBody;
}

/**
 * The event that a refusal comes from, when it is one of `eventsSince`: those recorded after the newest that the
 * sender's screen showed. Of several the newest; null when the refusal has its cause elsewhere.
 */
export function explainConflict(refusal: Refusal, eventsSince: readonly BatchEvent[]): Conflict | null {
  const causes = new Set(causingSeqs(refusal));
  let cause: BatchEvent | null = null;
  for (const event of eventsSince) {
    if ((causes.has(event.seq) || makesUnknown(refusal, event)) && event.seq > (cause?.seq ?? 0)) cause = event;
  }
  if (cause === null) return null;
  const { seq, personId, at, recordedAt, body } = cause;
  return { seq, personId, at, recordedAt, body };
}

/** A correction since then took away what the sender meant. */
function makesUnknown(refusal: Refusal, event: BatchEvent): boolean {
  switch (refusal.code) {
    case 'unknown-mix':
    case 'blocked':
    case 'not-yet':
    case 'window-closed':
    case 'not-done':
    case 'before-mix':
    case 'open-pieces':
      return event.body.kind === 'corrected';
    case 'not-finished':
      return event.body.kind === 'batch-reopened' || event.body.kind === 'corrected';
    default:
      return false;
  }
}

function causingSeqs(refusal: Refusal): readonly number[] {
  switch (refusal.code) {
    case 'scrapped-pieces':
    case 'already-done':
    case 'mix-in-use':
    case 'others-depend':
      return refusal.bySeqs;
    case 'batch-finished':
    case 'duplicate-mix':
    case 'mix-number-taken':
    case 'mix-closed':
    case 'already-corrected':
      return [refusal.bySeq];
    case 'bad-instant':
    case 'in-future':
    case 'not-opened':
    case 'already-opened':
    case 'before-opening':
    case 'bad-quantity':
    case 'not-finished':
    case 'open-pieces':
    case 'held-pieces':
    case 'not-quarantined':
    case 'unknown-operation':
    case 'wrong-operation-kind':
    case 'no-pieces':
    case 'unknown-pieces':
    case 'unknown-anchor':
    case 'blocked':
    case 'not-yet':
    case 'window-closed':
    case 'not-done':
    case 'unknown-mix':
    case 'before-mix':
    case 'closed-before-last-use':
    case 'bad-figure':
    case 'unknown-event':
    case 'cannot-correct-opening':
    case 'correction-only-undone':
    case 'mix-id-changed':
      return [];
  }
}
