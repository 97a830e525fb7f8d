import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { appendPullChange } from '@/prisma/data/pull-series';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export interface ClosePullSeriesRequest {
  readonly seriesId: string;
  readonly isClosed: boolean;
  readonly personId: string | null;
  readonly now: Instant;
}

/** Closes a series, so that no pull is added or changed by accident, or opens it again. */
export function closePullSeries(
  database: Db,
  { seriesId, isClosed, personId, now }: ClosePullSeriesRequest,
): Promise<Done | Refusal<'no-series'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-series'>> => {
    const row = await tx.pullSeries.findUnique({ where: { id: seriesId }, select: { status: true } });
    if (row === null) return { ok: false, code: 'no-series', message: 'This series is not there any more.' };
    const status = isClosed ? 'closed' : 'open';
    if (row.status === status) return DONE;
    await tx.pullSeries.update({
      where: { id: seriesId },
      data: { status, closedAt: isClosed ? new Date(now) : null },
    });
    await appendPullChange(tx, seriesId, { kind: isClosed ? 'closed' : 'reopened', at: now, personId });
    return DONE;
  });
}
