import type { NewModelInput } from '@/lib/contracts/model-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { isModelNameTaken } from '@/prisma/data/models';
import type { Refusal } from './command-result';
import { missingMaterials, NO_MATERIAL } from './draft-revision';

export type MakeModelResult = { readonly ok: true; readonly modelId: string } | Refusal<'name-taken' | 'no-material'>;

/** Makes a model with its first draft, revision A. */
export function makeModel(database: Db, input: NewModelInput, nowAt: Instant): Promise<MakeModelResult> {
  return writeTx(database, async (tx): Promise<MakeModelResult> => {
    if (await isModelNameTaken(tx, input.name, null)) {
      const message = 'Another model has this name, perhaps an archived one. Choose another, or revise that model.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    if ((await missingMaterials(tx, [input.woodMaterialId])).length > 0) {
      return { ...NO_MATERIAL, field: 'woodMaterialId' };
    }
    const now = new Date(nowAt);
    const { id } = await tx.model.create({
      data: {
        name: input.name,
        note: input.note,
        createdAt: now,
        revisions: {
          create: {
            letter: 'A',
            woodMaterialId: input.woodMaterialId,
            lengthMm: input.length,
            profile: [],
            note: '',
            createdAt: now,
            updatedAt: now,
          },
        },
      },
    });
    return { ok: true, modelId: id };
  });
}
