import { expect, it } from 'vitest';
import type { Db } from '@/prisma/client';
import { writeTx } from '@/prisma/client';
import { describeBothDatabases } from './both-databases';

const AT = new Date('2026-01-05T08:00:00.000Z');

function addPerson(db: Pick<Db, 'person'>, name: string) {
  return db.person.create({ data: { name, skills: [], createdAt: AT } });
}

describeBothDatabases('writeTx', (makeDb) => {
  it('keeps all of a transaction that ends well', async () => {
    const db = await makeDb();
    await writeTx(db, async (tx) => {
      await addPerson(tx, 'Ada');
      await addPerson(tx, 'Ben');
    });
    expect(await db.person.count()).toBe(2);
  });
});
