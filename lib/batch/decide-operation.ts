import { potLifeWarnings, usableMix } from '@/lib/batch/decide-mix';
import { decideNeeds, piecesOf, refusedPieces, rising, unknownOrScrapped } from '@/lib/batch/decide-pieces';
import type { ActionWarning, Decision, RecordedAs } from '@/lib/batch/decision';
import { refused } from '@/lib/batch/decision';
import type { KnownBatch, WaitingFor } from '@/lib/batch/evaluation';
import type { BatchEventBody } from '@/lib/batch/events';
import type { IndexedOperation } from '@/lib/batch/plan-index';
import { planIndex } from '@/lib/batch/plan-index';
import type { Instant } from '@/lib/units/instant';

type Body<K extends BatchEventBody['kind']> = Extract<BatchEventBody, { kind: K }>;

/** Whether attended work may be recorded as done. */
export function decideWork(batch: KnownBatch, at: Instant, body: Body<'work-done'>): Decision {
  const found = operationRecordedAs(batch, body.operationId, 'work');
  if (!('index' in found)) return found;
  return (
    unknownOrScrapped(batch.state, body.pieces) ??
    alreadyDone(batch, found, body.pieces) ??
    decideNeeds(batch, found.index, body.pieces, at)
  );
}

/** Whether a coat may be recorded with a mix. */
export function decideCoat(batch: KnownBatch, at: Instant, body: Body<'coat-applied'>): Decision {
  const mix = usableMix(batch, at, body.mixId);
  if ('ok' in mix) return mix;
  const found = operationRecordedAs(batch, mix.operationId, 'coat');
  if (!('index' in found)) return found;
  return (
    unknownOrScrapped(batch.state, body.pieces) ??
    alreadyDone(batch, found, body.pieces) ??
    withWarnings(decideNeeds(batch, found.index, body.pieces, at), potLifeWarnings(mix, at))
  );
}

/** Whether joints may be recorded with a mix. */
export function decideJoints(batch: KnownBatch, at: Instant, body: Body<'joints-set'>): Decision {
  const mix = usableMix(batch, at, body.mixId);
  if ('ok' in mix) return mix;
  const found = operationRecordedAs(batch, mix.operationId, 'joints');
  if (!('index' in found)) return found;
  const { anchorIds } = found.indexed.operation;
  const unknown = body.joints.filter(({ anchorId }) => !anchorIds.includes(anchorId)).map(({ anchorId }) => anchorId);
  if (unknown.length > 0) return refused({ code: 'unknown-anchor', anchorIds: [...new Set(unknown)] });
  const asked = body.joints.map(({ piece }) => piece);
  return (
    unknownOrScrapped(batch.state, asked) ??
    jointsAlreadySet(batch, found, body.joints) ??
    withWarnings(decideNeeds(batch, found.index, asked, at), potLifeWarnings(mix, at))
  );
}

/** Whether a closed recoat window may be recorded as made good. */
export function decideRemedy(batch: KnownBatch, at: Instant, body: Body<'window-remedied'>): Decision {
  const index = planIndex(batch.plan).indexOf.get(body.operationId);
  const indexed = index === undefined ? undefined : planIndex(batch.plan).operations[index];
  const { operationId } = body;
  if (index === undefined || indexed === undefined) return refused({ code: 'unknown-operation', operationId });
  if (indexed.recordedAs === 'work') {
    return refused({ code: 'wrong-operation-kind', operationId, recordedAs: indexed.recordedAs });
  }
  const unfit = unknownOrScrapped(batch.state, body.pieces);
  if (unfit !== null) return unfit;
  const undone = piecesOf(batch.state, body.pieces).filter((piece) => {
    const doneAt = piece.operations[index]?.doneAt ?? null;
    return doneAt === null || doneAt > at;
  });
  if (undone.length === 0) return { ok: true, warnings: beforeSand(batch, index, body, at) };
  const numbers = undone.map((piece) => piece.number);
  return refused({ code: 'not-done', operationId, ...refusedPieces(numbers, body.pieces) });
}

interface FoundOperation {
  readonly index: number;
  readonly indexed: IndexedOperation;
}

function operationRecordedAs(batch: KnownBatch, operationId: string, wanted: RecordedAs): FoundOperation | Decision {
  const { indexOf, operations } = planIndex(batch.plan);
  const index = indexOf.get(operationId);
  const indexed = index === undefined ? undefined : operations[index];
  if (index === undefined || indexed === undefined) return refused({ code: 'unknown-operation', operationId });
  if (indexed.recordedAs === wanted) return { index, indexed };
  return refused({ code: 'wrong-operation-kind', operationId, recordedAs: indexed.recordedAs });
}

function alreadyDone(batch: KnownBatch, { index, indexed }: FoundOperation, asked: readonly number[]): Decision | null {
  const done = piecesOf(batch.state, asked).filter((piece) => piece.operations[index]?.doneAt != null);
  if (done.length === 0) return null;
  const bySeqs = rising(done.flatMap((piece) => piece.operations[index]?.doneSeq ?? []));
  const numbers = done.map((piece) => piece.number);
  return refused({
    code: 'already-done',
    operationId: indexed.operation.id,
    bySeqs,
    ...refusedPieces(numbers, asked),
  });
}

function jointsAlreadySet(
  batch: KnownBatch,
  { index, indexed }: FoundOperation,
  joints: Body<'joints-set'>['joints'],
): Decision | null {
  const { anchorIds, id: operationId } = indexed.operation;
  const set = joints.flatMap(({ piece, anchorId }) => {
    const joint = batch.state.pieces[piece - 1]?.operations[index]?.joints[anchorIds.indexOf(anchorId)]?.set;
    return joint == null ? [] : [{ piece, seq: joint.seq }];
  });
  if (set.length === 0) return null;
  const bySeqs = rising(set.map(({ seq }) => seq));
  const asked = joints.map(({ piece }) => piece);
  const numbers = set.map(({ piece }) => piece);
  return refused({ code: 'already-done', operationId, bySeqs, ...refusedPieces(numbers, asked) });
}

function withWarnings(decision: Decision, warnings: readonly ActionWarning[]): Decision {
  return decision.ok ? { ok: true, warnings: [...warnings, ...decision.warnings] } : decision;
}

/** Sanding a film that is not sandable for sure clogs the paper, and the dust of green epoxy sensitises. */
function beforeSand(
  batch: KnownBatch,
  index: number,
  { operationId, pieces }: Body<'window-remedied'>,
  at: Instant,
): readonly ActionWarning[] {
  const early = new Map<string, { readonly waiting: WaitingFor; readonly pieces: number[] }>();
  for (const piece of piecesOf(batch.state, pieces)) {
    for (const clockIndex of piece.operations[index]?.clockIndexes ?? []) {
      const clock = batch.state.clocks[clockIndex];
      const release = clock === undefined ? null : batch.releases.release(clock, 'sand');
      if (clock === undefined || release === null || !release.ok) continue;
      const { band } = release;
      if (band.latestAt !== null && band.latestAt <= at) continue;
      const waiting: WaitingFor = { operationId, milestone: 'sand', mixIds: [clock.mixId], band };
      const group = early.get(clock.id) ?? { waiting, pieces: [] };
      group.pieces.push(piece.number);
      early.set(clock.id, group);
    }
  }
  return [...early.values()].map((group) => ({ code: 'remedy-before-sand', ...group }));
}
