import type { IssueInput } from '@/lib/contracts/stock-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { type MoveLotResult, moveLot } from './move-lot';

/** Takes from a lot, for a batch or for something else. The book never goes below zero. */
export function issueStock(
  database: Db,
  lotId: string,
  { milli, foundLeftMilli, batchId, reason, key }: IssueInput,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<MoveLotResult> {
  const request = { kind: 'issue', milli, foundLeftMilli } as const;
  const none = { mixId: null, correctsId: null, priceMinor: null };
  return writeTx(database, (tx) => moveLot(tx, { lotId, request, batchId, reason, key, personId, nowAt, ...none }));
}
