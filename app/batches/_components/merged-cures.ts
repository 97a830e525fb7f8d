import type { CureSpan } from '@/lib/batch/timeline';
import type { Instant } from '@/lib/units/instant';

/** Joints or coats of one mix on one operation: they stand for each other but for the minutes between them. */
export interface MergedCure {
  readonly firstSetAt: Instant;
  readonly lastSetAt: Instant;
  /** Rising. */
  readonly pieces: readonly number[];
  /** Of these, the ones with a joint or a coat after the pot life. */
  readonly latePieces: readonly number[];
  /** The one that was set last, and whose hours therefore hold for all of them. */
  readonly last: CureSpan;
}

/** The cures of each mix as one, in the order of their first setting. */
export function mergedCures(cures: readonly CureSpan[]): MergedCure[] {
  const byMix = new Map<string, CureSpan[]>();
  for (const cure of cures) {
    const key = `${cure.mixId} ${cure.operationId}`;
    byMix.set(key, [...(byMix.get(key) ?? []), cure]);
  }
  const merged: MergedCure[] = [];
  for (const spans of byMix.values()) {
    const bySetting = spans.toSorted((a, b) => a.setAt - b.setAt);
    const [first, last] = [bySetting[0], bySetting.at(-1)];
    if (first === undefined || last === undefined) continue;
    merged.push({
      firstSetAt: first.setAt,
      lastSetAt: last.setAt,
      pieces: rising(spans.flatMap((span) => span.pieces)),
      latePieces: rising(spans.filter((span) => span.late).flatMap((span) => span.pieces)),
      last,
    });
  }
  return merged.sort((a, b) => a.firstSetAt - b.firstSetAt);
}

function rising(numbers: readonly number[]): number[] {
  return [...new Set(numbers)].sort((a, b) => a - b);
}

/** The last milestone that can be told; null when one lies beyond what can be told. */
export function cureEnd({ lastSetAt, last }: MergedCure): Instant | null {
  let end: Instant | null = lastSetAt;
  for (const mark of last.marks) {
    if (!mark.ok) continue;
    end = mark.band.latestAt === null || end === null ? null : Math.max(end, mark.band.latestAt);
  }
  return end;
}
