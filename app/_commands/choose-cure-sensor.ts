import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

/** Chooses whose readings rule the cure clocks; null: the usual week does. Every clock is read anew. */
export function chooseCureSensor(
  database: Db,
  cureSensorId: string | null,
  nowAt: Instant,
): Promise<Done | Refusal<'no-sensor'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-sensor'>> => {
    const isThere = cureSensorId === null || (await tx.sensor.count({ where: { id: cureSensorId } })) === 1;
    if (!isThere) {
      const message = 'This sensor is not there any more. Choose another.';
      return { ok: false, code: 'no-sensor', message, field: 'cureSensorId' };
    }
    await saveShop(tx, { cureSensorId }, nowAt);
    return DONE;
  });
}
