import type { BatchState, PieceState } from '@/lib/batch/batch-state';
import type { BatchEvaluation, KnownBatch, OperationStatus, StageGroup } from '@/lib/batch/evaluation';
import type { BatchEvent } from '@/lib/batch/events';
import { nextReleases } from '@/lib/batch/next-releases';
import { operationStatus } from '@/lib/batch/operation-status';
import { planIndex } from '@/lib/batch/plan-index';
import type { Instant } from '@/lib/units/instant';

/** An evaluation and the stretch of time in which nothing it compares `nowAt` with is passed. */
interface Kept {
  readonly evaluation: BatchEvaluation;
  readonly untilAt: Instant;
}

const kept = new WeakMap<KnownBatch, Kept>();

/**
 * What a batch's state means at `nowAt`: what each live piece can go on with, waits for, or is blocked by, with equal
 * pieces together, and the next release of each clock. Asked again before the next end of a release, it answers
 * what it found the last time.
 */
export function evaluateBatch(batch: KnownBatch, nowAt: Instant): BatchEvaluation {
  const last = kept.get(batch);
  if (last !== undefined && last.evaluation.nowAt <= nowAt && nowAt < last.untilAt)
    return { ...last.evaluation, nowAt };
  const evaluation = evaluated(batch, nowAt);
  // What is recorded as later than now is compared with now as well; it is rare, and then nothing is kept.
  const isAllPast = batch.state.history.every(({ event }) => latestAtOf(event) <= nowAt);
  kept.set(batch, { evaluation, untilAt: isAllPast ? batch.releases.nextEndAfter(nowAt) : nowAt });
  return evaluation;
}

function latestAtOf({ at, body }: BatchEvent): Instant {
  return body.kind === 'corrected' && body.replacement !== null ? Math.max(at, body.replacement.at) : at;
}

function evaluated(batch: KnownBatch, nowAt: Instant): BatchEvaluation {
  let livePieces = 0;
  let donePieces = 0;
  for (const pieces of alikePieces(batch.state)) {
    livePieces += pieces.length;
    const isDone = pieces[0]?.operations.every((operation) => operation.doneAt !== null) ?? false;
    if (isDone) donePieces += pieces.length;
  }
  const groups = pieceStages(batch, nowAt);
  return { nowAt, groups, nextReleases: nextReleases(batch, nowAt), livePieces, donePieces };
}

/** Every operation not done on the live pieces with what stands before it, equal pieces together, in route order. */
export function pieceStages(batch: KnownBatch, at: Instant): readonly StageGroup[] {
  const byOperation = planIndex(batch.plan).operations.map(() => new Map<string, GrowingGroup>());
  for (const pieces of alikePieces(batch.state)) {
    const first = pieces[0];
    if (first === undefined) continue;
    first.operations.forEach((operation, index) => {
      const groups = byOperation[index];
      if (operation.doneAt !== null || groups === undefined) return;
      const status = operationStatus(batch, first, index, at);
      const key = statusKey(status);
      const group = groups.get(key) ?? { operationId: operation.operationId, status, pieces: [] };
      for (const piece of pieces) group.pieces.push(piece.number);
      groups.set(key, group);
    });
  }
  return byOperation.flatMap((groups) => {
    for (const group of groups.values()) group.pieces.sort((a, b) => a - b);
    return [...groups.values()].sort((a, b) => (a.pieces[0] ?? 0) - (b.pieces[0] ?? 0));
  });
}

interface GrowingGroup {
  readonly operationId: string;
  readonly status: OperationStatus;
  readonly pieces: number[];
}

const alikeOf = new WeakMap<BatchState, readonly (readonly PieceState[])[]>();

/** The live pieces, those together that nothing tells apart at any time. Found once for each state. */
function alikePieces(state: BatchState): readonly (readonly PieceState[])[] {
  const known = alikeOf.get(state);
  if (known !== undefined) return known;
  const alike = new Map<string, PieceState[]>();
  for (const piece of state.pieces) {
    if (piece.scrapped !== null) continue;
    const key = progressKey(piece);
    const same = alike.get(key);
    if (same === undefined) alike.set(key, [piece]);
    else same.push(piece);
  }
  const groups = [...alike.values()];
  alikeOf.set(state, groups);
  return groups;
}

/** Equal for pieces that every need of the plan sees as equal. */
function progressKey(piece: PieceState): string {
  let key = '';
  for (const { doneAt, clockIndexes, remediedAt } of piece.operations) {
    key += doneAt === null ? '|' : `${doneAt}/${clockIndexes}/${remediedAt}|`;
  }
  return key;
}

function statusKey(status: OperationStatus): string {
  switch (status.kind) {
    case 'ready':
      return `ready ${status.sinceAt} ${status.closesAt}`;
    case 'blocked':
      return JSON.stringify(status.byOperationIds);
    case 'waits':
      return JSON.stringify(status.waiting);
    case 'window-closed':
    case 'not-judged':
      return JSON.stringify(status);
  }
}
