import type { SensorInput } from '@/lib/contracts/shop-settings';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { isSensorNameTaken } from '@/prisma/data/sensors';
import { getShop, saveShop } from '@/prisma/data/shop';
import type { Refusal } from './command-result';

export type AddSensorResult =
  | { readonly ok: true; readonly sensorId: string; readonly rulesClocks: boolean }
  | Refusal<'name-taken'>;

/** Adds a sensor. The first one of a shop rules the cure clocks at once. */
export function addSensor(database: Db, input: SensorInput, nowAt: Instant): Promise<AddSensorResult> {
  return writeTx(database, (tx) => addSensorInTurn(tx, input, nowAt));
}

/** The same as a part of something larger. */
export async function addSensorInTurn(tx: Tx, { name, place }: SensorInput, nowAt: Instant): Promise<AddSensorResult> {
  if (await isSensorNameTaken(tx, name, null)) {
    return { ok: false, code: 'name-taken', message: 'Another sensor has this name.', field: 'name' };
  }
  const isFirst = (await tx.sensor.count()) === 0 && (await getShop(tx)).cureSensorId === null;
  const { id } = await tx.sensor.create({ data: { name, place, createdAt: new Date(nowAt) } });
  if (isFirst) await saveShop(tx, { cureSensorId: id }, nowAt);
  return { ok: true, sensorId: id, rulesClocks: isFirst };
}
