import { expect, it } from 'vitest';
import { isPostgresDb, writeTx } from '@/prisma/client';
import { dataVersion } from '@/prisma/data/data-version';
import { insertTestWorkshop } from '../app/test-workshop';
import { describeBothDatabases } from './both-databases';

describeBothDatabases('the version of the data', (makeDb) => {
  it('stays while nothing is written, and is another one after each write', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const first = await dataVersion(db);
    await db.batch.findMany();
    // Other tests write to the same server meanwhile.
    if (!isPostgresDb(db)) expect(await dataVersion(db)).toBe(first);
    await db.shop.updateMany({ data: { name: 'Another name' } });
    const second = await dataVersion(db);
    expect(second).not.toBe(first);
    await writeTx(db, async (tx) => {
      await tx.shop.updateMany({ data: { name: 'A third name' } });
    });
    expect(await dataVersion(db)).not.toBe(second);
  });
});
