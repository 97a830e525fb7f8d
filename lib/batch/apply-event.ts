import type { AnomalyCode } from '@/lib/batch/anomaly';
import { applyCoat, applyJoints, applyRemedy, applyWork } from '@/lib/batch/apply-operation';
import type { BatchDraft, DraftOperation } from '@/lib/batch/batch-draft';
import { MAX_BATCH_PIECES } from '@/lib/batch/batch-draft';
import type { BatchEventBody } from '@/lib/batch/events';
import { mixPotLife } from '@/lib/batch/mix-pot-life';
import type { Instant } from '@/lib/units/instant';

const LATEST_INSTANT = 8.64e15;

/** Whether a number is an instant that a date can hold. */
export function isInstant(at: Instant): boolean {
  return Number.isFinite(at) && Math.abs(at) <= LATEST_INSTANT;
}

/**
 * Takes one event into the draft, as far as it can be. What is wrong with a part of it is noted in the draft; what is
 * wrong with the whole is returned, and then nothing of it was taken in.
 */
export function applyEvent(draft: BatchDraft, at: Instant, body: BatchEventBody): AnomalyCode | null {
  // Settled before; it changes nothing by itself.
  if (body.kind === 'corrected') return null;
  if (!isInstant(at)) return 'bad-instant';
  if (body.kind === 'batch-opened') return open(draft, at, body.quantity);
  if (draft.openedAt === null) return 'not-opened';
  if (at < draft.openedAt) return 'before-opening';
  if (body.kind === 'noted') return note(draft, at, body);
  if (body.kind === 'batch-reopened') return reopen(draft);
  // A mix can fall in doubt when its batch is finished already.
  if (body.kind === 'mix-quarantined') return quarantine(draft, at, body);
  if (body.kind === 'pieces-cleared') return clear(draft, body);
  if (draft.finishedAt !== null) return 'batch-finished';
  switch (body.kind) {
    case 'work-done':
      return applyWork(draft, at, body);
    case 'mix-started':
      return startMix(draft, at, body);
    case 'joints-set':
      return applyJoints(draft, at, body);
    case 'coat-applied':
      return applyCoat(draft, at, body);
    case 'mix-closed':
      return closeMix(draft, at, body.mixId);
    case 'window-remedied':
      return applyRemedy(draft, at, body);
    case 'pieces-scrapped':
      return scrap(draft, at, body);
    case 'batch-finished':
      return finish(draft, at);
    default:
      body satisfies never;
      return 'unreadable';
  }
}

type Body<K extends BatchEventBody['kind']> = Extract<BatchEventBody, { kind: K }>;

function open(draft: BatchDraft, at: Instant, quantity: number): AnomalyCode | null {
  if (draft.openedAt !== null) return 'already-opened';
  const pieces = draft.plan.quantity;
  if (!Number.isSafeInteger(pieces) || pieces < 1 || pieces > MAX_BATCH_PIECES) return 'bad-quantity';
  if (quantity !== pieces) draft.flag('bad-quantity');
  draft.openedAt = at;
  draft.pieces = Array.from({ length: pieces }, (_, index) => ({
    number: index + 1,
    scrapped: null,
    operations: draft.index.operations.map(
      ({ operation }): DraftOperation => ({
        doneAt: null,
        doneSeq: null,
        joints: operation.kind === 'glue' ? operation.anchorIds.map(() => null) : [],
        coat: null,
        remediedAt: null,
      }),
    ),
  }));
  return null;
}

function note(draft: BatchDraft, at: Instant, body: Body<'noted'>): AnomalyCode | null {
  for (const number of body.pieces) if (draft.pieces[number - 1] === undefined) draft.flag('unknown-pieces', number);
  draft.notes.push({ seq: draft.seq, at, personId: draft.personId, text: body.text, pieces: body.pieces });
  return null;
}

function reopen(draft: BatchDraft): AnomalyCode | null {
  if (draft.finishedAt === null) return 'not-finished';
  draft.finishedAt = null;
  draft.finishedSeq = null;
  return null;
}

function finish(draft: BatchDraft, at: Instant): AnomalyCode | null {
  const open = draft.pieces.filter(
    (piece) => piece.scrapped === null && piece.operations.some((operation) => operation.doneAt === null),
  );
  for (const piece of open) draft.refuse('open-pieces', piece.number);
  if (open.length > 0) return null;
  draft.finishedAt = at;
  draft.finishedSeq = draft.seq;
  return null;
}

function scrap(draft: BatchDraft, at: Instant, body: Body<'pieces-scrapped'>): AnomalyCode | null {
  if (body.pieces.length === 0) return 'no-pieces';
  for (const number of body.pieces) {
    // Named twice in one event is no second scrapping.
    if (draft.pieces[number - 1]?.scrapped?.seq === draft.seq) continue;
    const piece = draft.livePiece(number);
    if (piece !== null) piece.scrapped = { at, seq: draft.seq, reason: body.reason };
  }
  return null;
}

function startMix(draft: BatchDraft, at: Instant, body: Body<'mix-started'>): AnomalyCode | null {
  const operationIndex = draft.index.indexOf.get(body.operationId);
  const operation = operationIndex === undefined ? undefined : draft.index.operations[operationIndex];
  if (operationIndex === undefined || operation === undefined) return 'unknown-operation';
  if (operation.recordedAs === 'work') return 'wrong-operation-kind';
  if (draft.mixes.has(body.mixId)) return 'duplicate-mix';
  draft.mixes.set(body.mixId, {
    mixId: body.mixId,
    number: body.number,
    operationId: body.operationId,
    operationIndex,
    materialId: body.materialId,
    materialName: body.materialName,
    sheet: body.sheet,
    massG: body.massG,
    temperatureC: body.temperatureC,
    lotIds: body.lotIds,
    mixedAt: at,
    seq: draft.seq,
    personId: draft.personId,
    potLife: mixPotLife(body, at),
    closedAt: null,
    closedSeq: null,
    jointCount: 0,
    coatCount: 0,
    lateCount: 0,
    lastUsedAt: null,
    quarantine: null,
  });
  return null;
}

function quarantine(draft: BatchDraft, at: Instant, { mixId, reason }: Body<'mix-quarantined'>): AnomalyCode | null {
  const mix = draft.mixes.get(mixId);
  if (mix === undefined) return 'unknown-mix';
  if (at < mix.mixedAt) return 'before-mix';
  mix.quarantine = { at, seq: draft.seq, reason, clearedPieces: [] };
  return null;
}

function clear(draft: BatchDraft, { mixId, pieces }: Body<'pieces-cleared'>): AnomalyCode | null {
  const mix = draft.mixes.get(mixId);
  if (mix === undefined) return 'unknown-mix';
  if (mix.quarantine === null) return 'not-quarantined';
  if (pieces.length === 0) return 'no-pieces';
  const known = pieces.filter((number) => draft.livePiece(number) !== null);
  const cleared = new Set([...mix.quarantine.clearedPieces, ...known]);
  mix.quarantine = { ...mix.quarantine, clearedPieces: [...cleared].sort((a, b) => a - b) };
  return null;
}

function closeMix(draft: BatchDraft, at: Instant, mixId: string): AnomalyCode | null {
  const mix = draft.mixes.get(mixId);
  if (mix === undefined) return 'unknown-mix';
  if (mix.closedAt !== null) return 'mix-closed';
  if (at < mix.mixedAt) return 'before-mix';
  if (mix.lastUsedAt !== null && at < mix.lastUsedAt) return 'closed-before-last-use';
  mix.closedAt = at;
  mix.closedSeq = draft.seq;
  return null;
}
