import { newAccessToken } from '@/app/_server/access-token';
import type { TokenInput } from '@/lib/contracts/access-token';
import type { Instant } from '@/lib/units/instant';
import { instantOfWallTime } from '@/lib/units/zoned-time';
import { type Db, writeTx } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';
import type { Refusal } from './command-result';

export type CreateTokenResult =
  | { readonly ok: true; readonly token: string }
  | Refusal<'no-sensor' | 'expires-in-the-past'>;

/** Makes a token. It is given back once and is not kept; it expires at the end of its last day in the shop. */
export function createAccessToken(
  database: Db,
  { name, scope, sensorId, expiresOn }: TokenInput,
  nowAt: Instant,
): Promise<CreateTokenResult> {
  return writeTx(database, async (tx): Promise<CreateTokenResult> => {
    const { timeZone } = await getShop(tx);
    const expiresAt = expiresOn === null ? null : instantOfWallTime(expiresOn, 1440, timeZone);
    if (expiresAt !== null && expiresAt <= nowAt) {
      const message = 'This day is over already.';
      return { ok: false, code: 'expires-in-the-past', message, field: 'expiresOn' };
    }
    const ownSensorId = scope === 'readings:write' ? sensorId : null;
    if (ownSensorId !== null && (await tx.sensor.count({ where: { id: ownSensorId } })) === 0) {
      const message = 'This sensor is not there any more. Choose another.';
      return { ok: false, code: 'no-sensor', message, field: 'sensorId' };
    }
    const { id, token, secretHash } = newAccessToken();
    await tx.accessToken.create({
      data: {
        id,
        name,
        scope,
        sensorId: ownSensorId,
        secretHash,
        createdAt: new Date(nowAt),
        expiresAt: expiresAt === null ? null : new Date(expiresAt),
      },
    });
    return { ok: true, token };
  });
}
