import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type WithdrawWaiverResult = Done | Refusal<'no-waiver'>;

/** Takes a waiver back. Its row stays as it was granted; taking it back twice changes nothing. */
export function withdrawWaiver(database: Db, waiverId: string, nowAt: Instant): Promise<WithdrawWaiverResult> {
  return writeTx(database, async (tx): Promise<WithdrawWaiverResult> => {
    const waiver = await tx.waiver.findUnique({ where: { id: waiverId }, select: { withdrawnAt: true } });
    if (waiver === null) return { ok: false, code: 'no-waiver', message: 'This waiver is not there any more.' };
    if (waiver.withdrawnAt === null) {
      await tx.waiver.update({ where: { id: waiverId }, data: { withdrawnAt: new Date(nowAt) } });
    }
    return DONE;
  });
}
