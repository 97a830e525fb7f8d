import type { ResourceChangeInput, ResourceInput } from '@/lib/contracts/resource-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SaveResourceResult =
  | { readonly ok: true; readonly resourceId: string }
  | Refusal<'name-taken' | 'no-resource'>;

const GONE: Refusal<'no-resource'> = {
  ok: false,
  code: 'no-resource',
  message: 'This is not in the list any more. Go back to Shop, Places.',
};

/** Adds a resource, or changes the one of `resourceId`. Names are unlike each other, in whatever case. */
export function saveResource(
  database: Db,
  resourceId: string | null,
  input: ResourceInput,
  nowAt: Instant,
): Promise<SaveResourceResult> {
  return writeTx(database, async (tx): Promise<SaveResourceResult> => {
    if (await isNameTaken(tx, input.name, resourceId)) {
      return { ok: false, code: 'name-taken', message: 'There is one of this name already.', field: 'name' };
    }
    const { name, kind, capacity, openFrom: openFromMinute, openTo: openToMinute } = input;
    const data = { name, kind, capacity, openFromMinute, openToMinute };
    if (resourceId === null) {
      const { id } = await tx.resource.create({ data: { ...data, createdAt: new Date(nowAt) } });
      return { ok: true, resourceId: id };
    }
    const { count } = await tx.resource.updateMany({ where: { id: resourceId }, data });
    return count === 0 ? GONE : { ok: true, resourceId };
  });
}

/** Takes a resource away; operations that used it then need none. Done twice, nothing happens. */
export async function removeResource(database: Db, resourceId: string): Promise<void> {
  await writeTx(database, (tx) => tx.resource.deleteMany({ where: { id: resourceId } }));
}

/** Writes down days on which a resource has another number of places. */
export function addResourceChange(
  database: Db,
  resourceId: string,
  input: ResourceChangeInput,
): Promise<Done | Refusal<'no-resource'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-resource'>> => {
    if ((await tx.resource.count({ where: { id: resourceId } })) === 0) return GONE;
    await tx.resourceChange.create({ data: { resourceId, ...input } });
    return DONE;
  });
}

/** Takes such days back. Done twice, nothing happens. */
export async function removeResourceChange(database: Db, changeId: string): Promise<void> {
  await writeTx(database, (tx) => tx.resourceChange.deleteMany({ where: { id: changeId } }));
}

async function isNameTaken(tx: Tx, name: string, exceptId: string | null): Promise<boolean> {
  const rows = await tx.resource.findMany({ select: { id: true, name: true } });
  const folded = name.toLocaleLowerCase('en');
  return rows.some((row) => row.id !== exceptId && row.name.toLocaleLowerCase('en') === folded);
}
