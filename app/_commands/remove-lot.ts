import { type Db, writeTx } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

/** Takes out a lot that was entered by mistake. One that went into a mix stays for ever. */
export function removeLot(database: Db, lotId: string): Promise<Done | Refusal<'lot-used' | 'has-moved'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'lot-used' | 'has-moved'>> => {
    const lot = await findLot(tx, lotId);
    if (lot === null) return DONE;
    if (lot.mixCount > 0) {
      const message = `This lot went into ${lot.mixCount} mixes and belongs to their history. It cannot be removed.`;
      return { ok: false, code: 'lot-used', message };
    }
    if (lot.movementCount > 0) {
      const message = 'Stock of this lot has moved, and its book stays. Count it to nothing when it is gone.';
      return { ok: false, code: 'has-moved', message };
    }
    await tx.lot.delete({ where: { id: lotId } });
    return DONE;
  });
}
