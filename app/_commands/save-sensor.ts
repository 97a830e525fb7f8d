import type { SensorInput } from '@/lib/contracts/shop-settings';
import { type Db, writeTx } from '@/prisma/client';
import { isSensorNameTaken } from '@/prisma/data/sensors';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

/** Gives a sensor another name or place. */
export function saveSensor(
  database: Db,
  sensorId: string,
  { name, place }: SensorInput,
): Promise<Done | Refusal<'name-taken' | 'no-sensor'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'name-taken' | 'no-sensor'>> => {
    if (await isSensorNameTaken(tx, name, sensorId)) {
      return { ok: false, code: 'name-taken', message: 'Another sensor has this name.', field: 'name' };
    }
    const { count } = await tx.sensor.updateMany({ where: { id: sensorId }, data: { name, place } });
    return count === 1 ? DONE : { ok: false, code: 'no-sensor', message: 'This sensor is not there any more.' };
  });
}
