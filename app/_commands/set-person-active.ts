import { type Db, writeTx } from '@/prisma/client';

/** Lets a person leave the shop, or come back. What they logged stays in their name. */
export async function setPersonActive(database: Db, personId: string, isActive: boolean): Promise<void> {
  await writeTx(database, (tx) => tx.person.updateMany({ where: { id: personId }, data: { isActive } }));
}
