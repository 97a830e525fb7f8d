import type { CorrectMovementInput } from '@/lib/contracts/stock-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findMovement, standingMilli } from '@/prisma/data/stock';
import { type MoveLotResult, moveLot } from './move-lot';

/**
 * Puts a receipt or an issue right by one more movement: it should have said `insteadMilli`, 0 when it did not happen.
 * What was taken for a batch by mistake is given back to it.
 */
export function correctMovement(
  database: Db,
  movementId: string,
  { insteadMilli, reason, key }: CorrectMovementInput,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<MoveLotResult> {
  return writeTx(database, async (tx): Promise<MoveLotResult> => {
    const movement = await findMovement(tx, movementId);
    if (movement === null) return { ok: false, code: 'no-lot', message: 'This movement is not in the book.' };
    const of = { kind: movement.kind, standingMilli: await standingMilli(tx, movement) };
    return moveLot(tx, {
      lotId: movement.lotId,
      request: { kind: 'correction', of, insteadMilli },
      reason,
      batchId: movement.batch?.id ?? null,
      mixId: movement.mixId,
      correctsId: movement.id,
      priceMinor: null,
      personId,
      key,
      nowAt,
    });
  });
}
