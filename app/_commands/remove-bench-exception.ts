import { type Db, writeTx } from '@/prisma/client';

/** Takes back a day that differs. Done twice it does no more. */
export async function removeBenchException(database: Db, exceptionId: string): Promise<void> {
  await writeTx(database, (tx) => tx.benchException.deleteMany({ where: { id: exceptionId } }));
}
