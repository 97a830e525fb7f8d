import type { BatchClock, BatchState, PieceOperation, PieceState } from '@/lib/batch/batch-state';
import type { ReleaseBand } from '@/lib/batch/cure-reader';
import type { KnownBatch, NotJudged, OperationStatus, ReleaseBook, WaitingFor } from '@/lib/batch/evaluation';
import type { IndexedNeed } from '@/lib/batch/plan-index';
import { planIndex } from '@/lib/batch/plan-index';
import { byInstant, lastBand } from '@/lib/batch/release-band';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

type NeedStatus =
  | { readonly kind: 'met'; readonly sinceAt: Instant; readonly closesAt: Instant | null }
  | Exclude<OperationStatus, { kind: 'ready' }>;

/**
 * What stands between a piece and an operation at an instant, by the needs of the plan alone: whether the operation is
 * done already is not asked. "Ready" rests on the latest end of each release, "window closed" on the earliest.
 * Of several obstacles the one to be dealt with first is told: earlier work, then a closed window, then a wait (the
 * longest), then what cannot be judged.
 *
 * `operationIndex` is the operation's position in the plan.
 */
export function operationStatus(
  batch: KnownBatch,
  piece: PieceState,
  operationIndex: number,
  at: Instant,
): OperationStatus {
  const needs = planIndex(batch.plan).operations[operationIndex]?.needs ?? [];
  const blocking: string[] = [];
  let closed: Extract<OperationStatus, { kind: 'window-closed' }> | null = null;
  let waiting: WaitingFor | null = null;
  let missing: NotJudged | null = null;
  let sinceAt = batch.state.openedAt ?? at;
  let closesAt: Instant | null = null;
  for (const need of needs) {
    const status = needStatus(batch, piece, need, at);
    switch (status.kind) {
      case 'met':
        sinceAt = Math.max(sinceAt, status.sinceAt);
        if (status.closesAt !== null) closesAt = Math.min(closesAt ?? status.closesAt, status.closesAt);
        break;
      case 'blocked':
        blocking.push(...status.byOperationIds);
        break;
      case 'window-closed':
        if (closed === null || status.closedAt < closed.closedAt) closed = status;
        break;
      case 'waits':
        if (waiting === null || byInstant(waiting.band.latestAt, status.waiting.band.latestAt) < 0) {
          waiting = status.waiting;
        }
        break;
      case 'not-judged':
        missing ??= status.missing;
        break;
    }
  }
  if (blocking.length > 0) return { kind: 'blocked', byOperationIds: [...new Set(blocking)] };
  if (closed !== null) return closed;
  if (waiting !== null) return { kind: 'waits', waiting };
  if (missing !== null) return { kind: 'not-judged', missing };
  return { kind: 'ready', sinceAt, closesAt };
}

function needStatus(batch: KnownBatch, piece: PieceState, need: IndexedNeed, at: Instant): NeedStatus {
  const needed = piece.operations[need.index];
  if (needed === undefined) {
    const milestone = need.wait === 'recoat' ? 'recoat-from' : need.wait;
    return { kind: 'not-judged', missing: { operationId: need.operationId, milestone, code: 'no-clock' } };
  }
  if (needed.doneAt === null) return { kind: 'blocked', byOperationIds: [need.operationId] };
  if (needed.doneAt > at) {
    const band = { earliestAt: needed.doneAt, centralAt: needed.doneAt, latestAt: needed.doneAt };
    return { kind: 'waits', waiting: { operationId: need.operationId, milestone: 'done', mixIds: [], band } };
  }
  if (need.wait === 'done') return { kind: 'met', sinceAt: needed.doneAt, closesAt: null };
  const clocks = clocksOf(batch.state, needed);
  if (need.wait !== 'recoat') return opening(batch.releases, clocks, need.operationId, need.wait, at);
  if (needed.remediedAt !== null && needed.remediedAt <= at) {
    return { kind: 'met', sinceAt: needed.remediedAt, closesAt: null };
  }
  return recoating(batch.releases, clocks, need.operationId, at);
}

function clocksOf(state: BatchState, operation: PieceOperation): readonly BatchClock[] {
  const clocks: BatchClock[] = [];
  for (const index of operation.clockIndexes) {
    const clock = state.clocks[index];
    if (clock !== undefined) clocks.push(clock);
  }
  return clocks;
}

/** A need that opens once the last of the clocks has reached the milestone for sure. */
function opening(
  releases: ReleaseBook,
  clocks: readonly BatchClock[],
  operationId: string,
  milestone: Milestone,
  at: Instant,
): NeedStatus {
  let band: ReleaseBand | null = null;
  for (const clock of clocks) {
    const release = releases.release(clock, milestone);
    if (!release.ok) return { kind: 'not-judged', missing: { operationId, milestone, code: release.code } };
    band = band === null ? release.band : lastBand(band, release.band);
  }
  if (band === null) return { kind: 'not-judged', missing: { operationId, milestone, code: 'no-clock' } };
  if (band.latestAt !== null && band.latestAt <= at) return { kind: 'met', sinceAt: band.latestAt, closesAt: null };
  const mixIds = [...new Set(clocks.map((clock) => clock.mixId))];
  return { kind: 'waits', waiting: { operationId, milestone, mixIds, band } };
}

/** A need with a window: open from the last recoat-from until the first recoat-by. */
function recoating(releases: ReleaseBook, clocks: readonly BatchClock[], operationId: string, at: Instant): NeedStatus {
  let closesAt: Instant | null = null;
  let closing: BatchClock | null = null;
  let missing: NotJudged | null = null;
  for (const clock of clocks) {
    const release = releases.release(clock, 'recoat-by');
    if (!release.ok) missing ??= { operationId, milestone: 'recoat-by', code: release.code };
    else if (closing === null || byInstant(release.band.earliestAt, closesAt) < 0) {
      closesAt = release.band.earliestAt;
      closing = clock;
    }
  }
  if (closing !== null && closesAt !== null && closesAt <= at) {
    return { kind: 'window-closed', operationId, closedAt: closesAt, remedy: closing.sheet.recoatRemedy ?? null };
  }
  const opens = opening(releases, clocks, operationId, 'recoat-from', at);
  if (opens.kind !== 'met') return opens;
  if (missing !== null) return { kind: 'not-judged', missing };
  return { kind: 'met', sinceAt: opens.sinceAt, closesAt };
}
