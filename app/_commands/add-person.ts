import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { isPersonNameTaken } from '@/prisma/data/people';
import type { Refusal } from './command-result';

export type AddPersonResult = { readonly ok: true; readonly personId: string } | Refusal<'name-taken'>;

/** Adds somebody who works in the shop. Two people do not share a name: the bench log would not tell them apart. */
export function addPerson(database: Db, name: string, nowAt: Instant): Promise<AddPersonResult> {
  return writeTx(database, async (tx) => {
    if (await isPersonNameTaken(tx, name, null)) {
      const message = 'Somebody of this name is there already, perhaps among those who left. Add an initial.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    const { id } = await tx.person.create({ data: { name, skills: [], createdAt: new Date(nowAt) } });
    return { ok: true, personId: id };
  });
}
