import type { ExclusionInput } from '@/lib/contracts/pull-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { appendPullChange } from '@/prisma/data/pull-series';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export interface ExcludePullRequest {
  readonly seriesId: string;
  readonly pullId: string;
  /** Null: it counts again. */
  readonly exclusion: ExclusionInput | null;
  readonly personId: string | null;
  readonly now: Instant;
}

/** Leaves a pull out for a physical reason, or counts it again. The reading stays, and so does every change. */
export function excludePull(
  database: Db,
  request: ExcludePullRequest,
): Promise<Done | Refusal<'no-pull' | 'series-closed'>> {
  const { seriesId, pullId, exclusion, personId, now } = request;
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-pull' | 'series-closed'>> => {
    const pull = await tx.pull.findFirst({
      where: { id: pullId, seriesId },
      include: { series: { select: { status: true } } },
    });
    if (pull === null) return { ok: false, code: 'no-pull', message: 'This series has no such pull. Reload the page.' };
    if (pull.series.status === 'closed') {
      return { ok: false, code: 'series-closed', message: 'This series is closed. Reopen it first.' };
    }
    const before = { reason: pull.excludedReason, note: pull.excludedNote };
    await tx.pull.update({
      where: { id: pullId },
      data:
        exclusion === null
          ? { excludedReason: null, excludedNote: '', excludedAt: null, excludedPersonId: null }
          : {
              excludedReason: exclusion.reason,
              excludedNote: exclusion.note,
              excludedAt: new Date(now),
              excludedPersonId: personId,
            },
    });
    const kind = exclusion === null ? 'pull-counted-again' : 'pull-excluded';
    await appendPullChange(tx, seriesId, { kind, pullId, at: now, personId, before, after: exclusion ?? {} });
    return DONE;
  });
}
