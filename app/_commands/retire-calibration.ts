import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

/** Takes a calibration out of use without another in its place. It stays as it was, with when and why it ended. */
export function retireCalibration(
  database: Db,
  calibrationId: string,
  { reason, now }: { readonly reason: string; readonly now: Instant },
): Promise<Done | Refusal<'not-in-force'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'not-in-force'>> => {
    const { count } = await tx.calibration.updateMany({
      where: { id: calibrationId, status: 'accepted' },
      data: { status: 'retired', endedAt: new Date(now), endedReason: reason },
    });
    if (count === 1) return DONE;
    return { ok: false, code: 'not-in-force', message: 'This calibration is not in force any more. Reload the page.' };
  });
}
