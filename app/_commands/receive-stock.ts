import type { ReceiveInput } from '@/lib/contracts/stock-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import { type MoveLotResult, moveLot } from './move-lot';

/** Takes in more of a lot that is in Stock already. */
export function receiveStock(
  database: Db,
  lotId: string,
  { milli, priceMinor, reason, key }: ReceiveInput,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<MoveLotResult> {
  return writeTx(database, async (tx): Promise<MoveLotResult> => {
    const lot = await findLot(tx, lotId);
    if (lot !== null && lot.priceMinor !== null && priceMinor === null) {
      const message = 'This lot has a price. Write what this part of it cost, 0 for nothing.';
      return { ok: false, code: 'no-price', message, field: 'priceMinor' };
    }
    const none = { batchId: null, mixId: null, correctsId: null };
    return moveLot(tx, {
      lotId,
      request: { kind: 'receipt', milli },
      priceMinor,
      reason,
      key,
      personId,
      nowAt,
      ...none,
    });
  });
}
