import type { MaterialInput } from '@/lib/contracts/material-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { isMaterialNameTaken } from '@/prisma/data/materials';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SaveMaterialResult = Done | Refusal<'name-taken' | 'no-material'>;

/** Gives a material another name or note. Mixes made before keep the name they were made under. */
export function saveMaterial(
  database: Db,
  materialId: string,
  input: MaterialInput,
  nowAt: Instant,
): Promise<SaveMaterialResult> {
  return writeTx(database, async (tx): Promise<SaveMaterialResult> => {
    if (await isMaterialNameTaken(tx, input.name, materialId)) {
      const message = 'Another material has this name, perhaps an archived one. Add what tells them apart.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    const data = { ...input, version: { increment: 1 }, updatedAt: new Date(nowAt) };
    const { count } = await tx.material.updateMany({ where: { id: materialId }, data });
    return count === 1 ? DONE : { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
  });
}
