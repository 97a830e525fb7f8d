import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';

/** Puts a material away, or takes it out again. What was made with it stays as it is. */
export async function setMaterialArchived(
  database: Db,
  materialId: string,
  isArchived: boolean,
  nowAt: Instant,
): Promise<void> {
  const data = { isArchived, version: { increment: 1 }, updatedAt: new Date(nowAt) };
  await writeTx(database, (tx) => tx.material.updateMany({ where: { id: materialId }, data }));
}
