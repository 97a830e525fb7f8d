import type { NewMaterialInput } from '@/lib/contracts/material-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { isMaterialNameTaken } from '@/prisma/data/materials';
import type { Refusal } from './command-result';

export type AddMaterialResult = { readonly ok: true; readonly materialId: string } | Refusal<'name-taken'>;

/** Adds a material to Stock. Two materials do not share a name: a mix would not tell which was in the cup. */
export function addMaterial(database: Db, input: NewMaterialInput, nowAt: Instant): Promise<AddMaterialResult> {
  return writeTx(database, async (tx): Promise<AddMaterialResult> => {
    if (await isMaterialNameTaken(tx, input.name, null)) {
      const message = 'Another material has this name, perhaps an archived one. Add what tells them apart.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    const now = new Date(nowAt);
    const { id } = await tx.material.create({ data: { ...input, sheetRevision: '', createdAt: now, updatedAt: now } });
    return { ok: true, materialId: id };
  });
}
