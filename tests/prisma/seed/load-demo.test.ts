import { expect, it } from 'vitest';
import { foldBatch } from '@/lib/batch/fold-batch';
import { listBatchEvents } from '@/prisma/data/batch-events';
import { findRevisionRoute } from '@/prisma/data/batch-plan';
import { getShop, untouchedShop } from '@/prisma/data/shop';
import { loadDemo } from '@/prisma/seed/load-demo';
import { loadStartingMaterials } from '@/prisma/seed/load-starting-materials';
import { prepareShop } from '@/prisma/seed/prepare-shop';
import { STARTING_MATERIALS } from '@/prisma/seed/starting-materials';
import { describeBothDatabases } from '../both-databases';

const NOW_AT = Date.parse('2026-02-10T23:00:00Z');

describeBothDatabases('starting materials', (makeDb) => {
  it('are put in once, and never over a material of the maker', async () => {
    const db = await makeDb();
    const at = new Date(NOW_AT);
    const own = {
      id: 'own',
      kind: 'wood',
      name: 'Basswood',
      sheetRevision: '',
      note: 'mine',
      createdAt: at,
      updatedAt: at,
    };
    await db.material.create({ data: own });
    expect(await loadStartingMaterials(db, NOW_AT)).toBe(STARTING_MATERIALS.length - 1);
    expect(await loadStartingMaterials(db, NOW_AT + 1)).toBe(0);
    expect(await db.material.findUnique({ where: { name: 'Basswood' } })).toMatchObject({ id: 'own', note: 'mine' });
  });
});

describeBothDatabases('prepareShop', (makeDb) => {
  it('gives a new shop its settings and materials, and leaves a shop alone that has settings', async () => {
    const db = await makeDb();
    expect(await prepareShop(db, NOW_AT)).toBe(true);
    expect(await getShop(db)).toEqual({ ...untouchedShop(), version: 1 });
    expect(await db.material.count()).toBe(STARTING_MATERIALS.length);
    await db.shop.updateMany({ data: { name: 'Ours' } });
    expect(await prepareShop(db, NOW_AT)).toBe(false);
    expect((await getShop(db)).name).toBe('Ours');
  });
});

describeBothDatabases('loadDemo', (makeDb) => {
  it('fills an empty database', async () => {
    const db = await makeDb();
    expect(await loadDemo(db, NOW_AT)).toEqual({ ok: true, batches: 6, readings: 14 * 96 - 14 });
    expect(await getShop(db)).toMatchObject({
      name: 'Demo workshop',
      timeZone: 'America/Chicago',
      cureSensorId: 'demo-sensor',
      demoLoadedAt: NOW_AT,
    });
    expect(await db.model.count()).toBe(4);
    expect(await db.person.count()).toBe(3);
    expect(await db.batch.count({ where: { status: 'finished' } })).toBe(1);
    expect(await db.revision.count({ where: { frozenAt: null } })).toBe(0);
  });

  it('keeps rows of mixes, lots and joints as the events tell them', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    for (const batch of await db.batch.findMany({ include: { mixes: { include: { lots: true } } } })) {
      const route = await findRevisionRoute(db, batch.revisionId);
      if (route === null) throw new Error('no route');
      const events = await listBatchEvents(db, batch.id);
      const state = foldBatch({ ...route.plan, quantity: batch.quantity }, events);
      expect(state.anomalies).toEqual([]);
      expect(batch.lastSeq).toBe(events.length);
      expect(batch.openedAt.getTime()).toBe(state.openedAt);
      expect(batch.finishedAt?.getTime() ?? null).toBe(state.finishedAt);
      expect(batch.mixes.map((mix) => [mix.id, mix.massG, mix.lots.length]).sort()).toEqual(
        state.mixes.map((mix) => [mix.mixId, mix.massG, mix.lotIds.length]).sort(),
      );
      const set = state.pieces.flatMap((piece) =>
        piece.operations.flatMap((operation) => operation.joints.filter((joint) => joint.set !== null)),
      );
      expect(await db.joint.count({ where: { piece: { batchId: batch.id }, NOT: { mixId: null } } })).toBe(set.length);
      expect(await db.piece.count({ where: { batchId: batch.id } })).toBe(batch.quantity);
    }
  });

  it('refuses a database with records and changes nothing', async () => {
    const db = await makeDb();
    await db.person.create({ data: { name: 'Ada', skills: [], createdAt: new Date(NOW_AT) } });
    expect(await loadDemo(db, NOW_AT)).toMatchObject({ ok: false, code: 'not-empty' });
    expect([await db.shop.count(), await db.material.count(), await db.batch.count()]).toEqual([0, 0, 0]);
  });

  it('refuses a second time', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    expect(await loadDemo(db, NOW_AT)).toMatchObject({ ok: false, code: 'not-empty' });
    expect(await db.batch.count()).toBe(6);
  });

  it('leaves the settings of a prepared shop as they are', async () => {
    const db = await makeDb();
    await prepareShop(db, NOW_AT);
    await db.shop.updateMany({ data: { name: 'Ours', timeZone: 'Europe/London' } });
    expect(await loadDemo(db, NOW_AT)).toMatchObject({ ok: true });
    expect(await getShop(db)).toMatchObject({ name: 'Ours', timeZone: 'Europe/London', lengthUnit: 'mm' });
  });
});
