import type { BatchClock, PieceState } from '@/lib/batch/batch-state';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** The instant from which what was done on these pieces is at a milestone for sure; null: not in sight, not judged. */
export function allowedAt(
  batch: KnownBatch,
  pieces: readonly PieceState[],
  operationIndex: number,
  milestone: Milestone,
): Instant | null {
  const clocks = clocksOf(batch, pieces, operationIndex);
  let at: Instant | null = Number.NEGATIVE_INFINITY;
  for (const clock of clocks) {
    const release = batch.releases.release(clock, milestone);
    const own = release.ok ? release.band.latestAt : null;
    at = own === null || at === null ? null : Math.max(at, own);
  }
  return clocks.length === 0 ? null : at;
}

/** The instant at which the first recoat window of these pieces closes; null without one that matters still. */
export function closesAt(batch: KnownBatch, pieces: readonly PieceState[], operationIndex: number): Instant | null {
  const waiting = pieces.filter((piece) => piece.operations[operationIndex]?.remediedAt === null);
  const ends = clocksOf(batch, waiting, operationIndex).flatMap((clock) => {
    const release = batch.releases.release(clock, 'recoat-by');
    return release.ok && release.band.earliestAt !== null ? [release.band.earliestAt] : [];
  });
  return ends.length === 0 ? null : Math.min(...ends);
}

function clocksOf(batch: KnownBatch, pieces: readonly PieceState[], operationIndex: number): readonly BatchClock[] {
  const indexes = new Set(pieces.flatMap((piece) => piece.operations[operationIndex]?.clockIndexes ?? []));
  return [...indexes].flatMap((index) => batch.state.clocks[index] ?? []);
}
