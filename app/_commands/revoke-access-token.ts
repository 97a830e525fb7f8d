import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';

/** Makes a token useless from now on. Done twice, the first instant stays. */
export async function revokeAccessToken(database: Db, tokenId: string, nowAt: Instant): Promise<void> {
  const data = { revokedAt: new Date(nowAt) };
  await writeTx(database, (tx) => tx.accessToken.updateMany({ where: { id: tokenId, revokedAt: null }, data }));
}
