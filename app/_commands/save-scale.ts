import type { ScaleInput } from '@/lib/contracts/pull-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Refusal } from './command-result';

export type SaveScaleResult =
  | { readonly ok: true; readonly scaleId: string }
  | Refusal<'no-scale' | 'name-taken' | 'checked-in-future'>;

/**
 * Adds a scale, or changes what is written of one. Pulls keep the scale as it stood when they were made. `today`: the
 * day in the shop.
 */
export function saveScale(
  database: Db,
  scaleId: string | null,
  { name, greatest, checkedOn, note }: ScaleInput,
  { today, nowAt }: { readonly today: string; readonly nowAt: Instant },
): Promise<SaveScaleResult> {
  return writeTx(database, async (tx): Promise<SaveScaleResult> => {
    if (checkedOn !== null && checkedOn > today) {
      return { ok: false, code: 'checked-in-future', message: 'This day is still to come.', field: 'checkedOn' };
    }
    const twin = await tx.scale.findUnique({ where: { name }, select: { id: true } });
    if (twin !== null && twin.id !== scaleId) {
      return { ok: false, code: 'name-taken', message: 'There is a scale of this name.', field: 'name' };
    }
    const data = { name, greatestN: greatest, checkedOn, note };
    if (scaleId === null) {
      const { id } = await tx.scale.create({ data: { ...data, createdAt: new Date(nowAt) } });
      return { ok: true, scaleId: id };
    }
    const { count } = await tx.scale.updateMany({ where: { id: scaleId }, data });
    if (count === 0) return { ok: false, code: 'no-scale', message: 'This scale is not there any more.' };
    return { ok: true, scaleId };
  });
}
