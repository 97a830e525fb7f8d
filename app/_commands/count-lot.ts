import type { CountInput } from '@/lib/contracts/stock-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { type MoveLotResult, moveLot } from './move-lot';

/** Writes down what really lies there of a lot. The difference to the book is kept with the reason. */
export function countLot(
  database: Db,
  lotId: string,
  { countedMilli, reason, key }: CountInput,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<MoveLotResult> {
  const request = { kind: 'count', countedMilli } as const;
  const none = { batchId: null, mixId: null, correctsId: null, priceMinor: null };
  return writeTx(database, (tx) => moveLot(tx, { lotId, request, reason, key, personId, nowAt, ...none }));
}
