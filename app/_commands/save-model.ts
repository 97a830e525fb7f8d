import type { ModelInput } from '@/lib/contracts/model-forms';
import { type Db, writeTx } from '@/prisma/client';
import { isModelNameTaken } from '@/prisma/data/models';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SaveModelResult = Done | Refusal<'name-taken' | 'no-model'>;

/** Gives a model another name or note. */
export function saveModel(database: Db, modelId: string, { name, note }: ModelInput): Promise<SaveModelResult> {
  return writeTx(database, async (tx): Promise<SaveModelResult> => {
    if (await isModelNameTaken(tx, name, modelId)) {
      const message = 'Another model has this name, perhaps an archived one. Choose another.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    const { count } = await tx.model.updateMany({ where: { id: modelId }, data: { name, note } });
    return count === 1 ? DONE : { ok: false, code: 'no-model', message: 'This model is not there any more.' };
  });
}
