import { decideEvent } from '@/lib/batch/decide-event';
import type { ActionWarning, Refusal } from '@/lib/batch/decision';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEvent } from '@/lib/batch/events';
import { type Conflict, explainConflict } from '@/lib/batch/explain-conflict';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { RecordEventInput } from '@/lib/contracts/batch-action';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { appendEvent, findEventByKey } from '@/prisma/data/batch-events';
import { rowChanges, saveRows } from '@/prisma/data/batch-rows';
import { findBatchHead } from '@/prisma/data/batches';
import { getShop } from '@/prisma/data/shop';
import { takeForMixes } from '@/prisma/data/take-for-mixes';
import { type CureCourse, currentCourse } from '../_server/cure-course';
import { firstMixedAt, foldedBatch, knownBatch } from '../_server/known-batches';
import { type BodyFault, completedBody, isSameAction } from './event-body';

/** How far back something may be recorded: a month covers a forgotten notebook page. Chosen. */
export const LATEST_ENTRY_DAYS = 30;

export interface RecordEventRequest {
  readonly batchId: string;
  readonly input: RecordEventInput;
  /** Who stands at the device that sent it, unless the input names somebody. */
  readonly personId: string | null;
  readonly now: Instant;
}

export type RecordEventResult =
  | {
      readonly ok: true;
      readonly event: BatchEvent;
      /** The same action was taken in before under this key. */
      readonly isRepeat: boolean;
      readonly warnings: readonly ActionWarning[];
      readonly batch: KnownBatch;
    }
  | {
      readonly ok: false;
      readonly code: 'refused';
      readonly refusal: Refusal;
      /** What somebody else did since the sender's screen was drawn, when the refusal comes from that. */
      readonly conflict: Conflict | null;
      readonly batch: KnownBatch;
    }
  | ({ readonly ok: false } & BodyFault)
  | { readonly ok: false; readonly code: 'unknown-batch' | 'unknown-person' | 'key-reused' }
  | { readonly ok: false; readonly code: 'too-old'; readonly days: number };

/**
 * Takes in one action at the bench: decides whether it fits the batch as it stands at that moment, appends it as the
 * next event, and brings the rows of mixes and joints along, all in one transaction. The same key with the same
 * action is answered as the first time and counts once, so a sender that heard no answer may send again.
 */
export async function recordEvent(database: Db, request: RecordEventRequest): Promise<RecordEventResult> {
  const { batchId, input, now } = request;
  const at = Math.min(input.at ?? now, now);
  const replacedAt = input.action.kind === 'corrected' ? (input.action.replacement?.at ?? at) : at;
  const earliestAt = Math.min(at, replacedAt);
  if (earliestAt < now - LATEST_ENTRY_DAYS * 24 * HOUR_MS)
    return { ok: false, code: 'too-old', days: LATEST_ENTRY_DAYS };
  const head = await findBatchHead(database, batchId);
  if (head === null) return { ok: false, code: 'unknown-batch' };
  // The temperature is summed before the transaction, which must be short; a reading that comes in between counts
  // for the next action.
  const before = firstMixedAt([await foldedBatch(database, head)]) ?? now;
  const course = await currentCourse(database, await getShop(database), Math.min(before, earliestAt), now);
  return writeTx(database, (tx) => recordInTurn(tx, request, input.at ?? now, course));
}

async function recordInTurn(
  tx: Tx,
  { batchId, input, personId, now }: RecordEventRequest,
  claimedAt: Instant,
  course: CureCourse,
): Promise<RecordEventResult> {
  const version = await tx.batch.findUnique({
    where: { id: batchId },
    select: { id: true, revisionId: true, quantity: true, lastSeq: true },
  });
  if (version === null) return { ok: false, code: 'unknown-batch' };
  const folded = await foldedBatch(tx, version);
  const batch = knownBatch(batchId, folded, course);

  const known = await findEventByKey(tx, batchId, input.key);
  if (known !== null) {
    if (!isSameAction(known.body, input.action)) return { ok: false, code: 'key-reused' };
    return { ok: true, event: known, isRepeat: true, warnings: [], batch };
  }
  const actorId = input.personId ?? personId;
  const actor = actorId === null ? null : await tx.person.findUnique({ where: { id: actorId }, select: { id: true } });
  if (input.personId !== undefined && actor === null) return { ok: false, code: 'unknown-person' };

  const completed = await completedBody(tx, batchId, batch, input.action);
  if (!completed.ok) return completed;
  const { body } = completed;
  const decision = decideEvent(batch, { at: claimedAt, body }, now);
  if (!decision.ok) {
    const { refusal } = decision;
    const eventsSince = folded.events.filter((event) => event.seq > input.seenSeq);
    return { ok: false, code: 'refused', refusal, conflict: explainConflict(refusal, eventsSince), batch };
  }
  const event: BatchEvent = {
    seq: folded.lastSeq + 1,
    key: input.key,
    // A device's clock may run a little ahead; nothing is stored as having happened later than it was taken in.
    at: Math.min(claimedAt, now),
    recordedAt: now,
    personId: actor?.id ?? null,
    body,
  };
  await appendEvent(tx, batchId, event);
  const after = foldBatch(folded.plan, [...folded.events, event]);
  await saveRows(tx, batchId, batch.state, after);
  const { addedMixes, changedMixes, removedMixIds } = rowChanges(batch.state, after);
  await takeForMixes(
    tx,
    { batchId, seq: event.seq, personId: event.personId, at: now },
    {
      standing: [...addedMixes, ...changedMixes],
      removed: batch.state.mixes.filter((mix) => removedMixIds.includes(mix.mixId)),
    },
  );
  return { ok: true, event, isRepeat: false, warnings: decision.warnings, batch };
}
