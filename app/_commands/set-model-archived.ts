import { type Db, writeTx } from '@/prisma/client';

/** Puts a model away, or takes it out again. Its batches and revisions stay as they are. */
export async function setModelArchived(database: Db, modelId: string, isArchived: boolean): Promise<void> {
  await writeTx(database, (tx) => tx.model.updateMany({ where: { id: modelId }, data: { isArchived } }));
}
