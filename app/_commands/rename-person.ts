import { type Db, writeTx } from '@/prisma/client';
import { isPersonNameTaken } from '@/prisma/data/people';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type RenamePersonResult = Done | Refusal<'name-taken' | 'no-person'>;

/** Gives a person another name, also in everything they logged before. */
export function renamePerson(database: Db, personId: string, name: string): Promise<RenamePersonResult> {
  return writeTx(database, async (tx): Promise<RenamePersonResult> => {
    if (await isPersonNameTaken(tx, name, personId)) {
      const message = 'Somebody else has this name, perhaps among those who left. Add an initial.';
      return { ok: false, code: 'name-taken', message, field: 'name' };
    }
    const { count } = await tx.person.updateMany({ where: { id: personId }, data: { name } });
    return count === 1 ? DONE : { ok: false, code: 'no-person', message: 'This person is not in the list any more.' };
  });
}
