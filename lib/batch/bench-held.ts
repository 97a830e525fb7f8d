import type { BenchBatch, HeldPieces } from '@/lib/batch/bench-entries';
import { byInstant, lastBand } from '@/lib/batch/release-band';
import type { Instant } from '@/lib/units/instant';

type HeldStatus = HeldPieces['status'];

/**
 * The pieces that may not go on yet although their earlier operations are done: closed windows first, then what cannot
 * be judged, then waits by the hour they end. Pieces of one mix that wait for the same are one entry with the band of
 * the last of them.
 */
export function heldPieces(batches: readonly BenchBatch[]): readonly HeldPieces[] {
  const held: HeldPieces[] = [];
  for (const { batchId, evaluation } of batches) {
    const merged = new Map<string, { readonly operationId: string; readonly pieces: number[]; status: HeldStatus }>();
    for (const { operationId, pieces, status } of evaluation.groups) {
      if (status.kind === 'ready' || status.kind === 'blocked') continue;
      const key = `${operationId} ${mergeKey(status)}`;
      const entry = merged.get(key) ?? { operationId, pieces: [], status };
      for (const piece of pieces) entry.pieces.push(piece);
      entry.status = mergedStatus(entry.status, status);
      merged.set(key, entry);
    }
    for (const entry of merged.values()) {
      held.push({ batchId, ...entry, pieces: entry.pieces.sort((a, b) => a - b) });
    }
  }
  return held.sort((a, b) => rank(a.status) - rank(b.status) || byInstant(hourOf(a.status), hourOf(b.status)));
}

function mergeKey(status: HeldStatus): string {
  switch (status.kind) {
    case 'waits': {
      const { operationId, milestone, mixIds } = status.waiting;
      return JSON.stringify([operationId, milestone, mixIds]);
    }
    case 'window-closed':
      return JSON.stringify([status.operationId, status.closedAt, status.remedy]);
    case 'not-judged':
      return JSON.stringify(status.missing);
  }
}

function mergedStatus(a: HeldStatus, b: HeldStatus): HeldStatus {
  if (a.kind !== 'waits' || b.kind !== 'waits') return a;
  return { kind: 'waits', waiting: { ...a.waiting, band: lastBand(a.waiting.band, b.waiting.band) } };
}

function rank(status: HeldStatus): number {
  switch (status.kind) {
    case 'window-closed':
      return 0;
    case 'not-judged':
      return 1;
    case 'waits':
      return 2;
  }
}

function hourOf(status: HeldStatus): Instant | null {
  switch (status.kind) {
    case 'window-closed':
      return status.closedAt;
    case 'not-judged':
      return null;
    case 'waits':
      return status.waiting.band.latestAt;
  }
}
