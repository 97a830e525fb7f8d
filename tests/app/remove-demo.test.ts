import { expect, it } from 'vitest';
import { issueStock } from '@/app/_commands/issue-stock';
import { openBatch } from '@/app/_commands/open-batch';
import { removeDemo } from '@/app/_commands/remove-demo';
import type { Db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import { getShop } from '@/prisma/data/shop';
import { loadDemo } from '@/prisma/seed/load-demo';
import { STARTING_MATERIALS } from '@/prisma/seed/starting-materials';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW_AT = Date.parse('2026-02-10T23:00:00Z');
const LATER_AT = NOW_AT + 3_600_000;

async function openOwnBatch(db: Db, revisionId: string) {
  const request = {
    batchId: 'own-batch-1',
    revisionId,
    quantity: 2,
    dueOn: null,
    orderNote: '',
    personId: 'demo-ida',
    now: LATER_AT,
  };
  expect(await openBatch(db, request)).toMatchObject({ ok: true, number: 27 });
}

async function rowsOfDemo(db: Db): Promise<string[]> {
  const where = { where: { id: { startsWith: 'demo-' } }, select: { id: true } };
  const found = [
    await db.batch.findMany(where),
    await db.mix.findMany(where),
    await db.piece.findMany(where),
    await db.model.findMany(where),
    await db.revision.findMany(where),
    await db.anchor.findMany(where),
    await db.routeOperation.findMany(where),
    await db.material.findMany(where),
    await db.lot.findMany(where),
    await db.stockMovement.findMany(where),
    await db.person.findMany(where),
    await db.benchException.findMany(where),
    await db.sensor.findMany(where),
    await db.pullSeries.findMany(where),
    await db.pullSpecimen.findMany(where),
    await db.pull.findMany(where),
    await db.scale.findMany(where),
  ];
  return found.flat().map(({ id }) => id);
}

describeBothDatabases('removeDemo', (makeDb) => {
  it('takes out everything the demo brought and nothing else', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    const at = new Date(LATER_AT);
    await db.material.create({
      data: { id: 'own-1', kind: 'wood', name: 'Alder', sheetRevision: '', note: '', createdAt: at, updatedAt: at },
    });
    await db.person.create({ data: { id: 'own-2', name: 'Ada', skills: [], createdAt: at } });
    await db.model.create({ data: { id: 'own-3', name: 'Own model', note: '', createdAt: at } });
    expect(await removeDemo(db, LATER_AT)).toEqual({ ok: true, batches: 6, models: 4, kept: [] });
    expect(await rowsOfDemo(db)).toEqual([]);
    expect(await db.batchEvent.count()).toBe(0);
    expect(await db.stockMovement.count()).toBe(0);
    expect(await db.reading.count()).toBe(0);
    expect(await db.material.count()).toBe(STARTING_MATERIALS.length + 1);
    expect([await db.person.count(), await db.model.count()]).toEqual([1, 1]);
    expect(await getShop(db)).toMatchObject({
      name: 'Our workshop',
      cureSensorId: null,
      demoLoadedAt: null,
      lengthUnit: 'inch',
    });
  });

  it('keeps a lot of the demo that the maker took from, with all of its book', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    const form = { key: 'own-taking-1', milli: 1000, foundLeftMilli: null, batchId: null, reason: 'mine' };
    const by = { personId: 'demo-ida', nowAt: LATER_AT };
    expect(await issueStock(db, 'demo-lot-coil-2', form, by)).toMatchObject({ ok: true });
    const before = await db.stockMovement.count({ where: { lotId: 'demo-lot-coil-2' } });
    const removed = await removeDemo(db, LATER_AT);
    const kept = removed.ok ? removed.kept.map(({ kind, name }) => `${kind} ${name}`) : [];
    expect(kept).toContain('lot Coil 2');
    expect(kept.filter((line) => line.startsWith('lot'))).toHaveLength(1);
    expect(await db.stockMovement.count()).toBe(before);
    expect(await findLot(db, 'demo-lot-coil-2')).toMatchObject({ movementCount: before });
  });

  it('says no where there is no demo, also the second time', async () => {
    const db = await makeDb();
    expect(await removeDemo(db, NOW_AT)).toMatchObject({ ok: false, code: 'no-demo' });
    await loadDemo(db, NOW_AT);
    await removeDemo(db, LATER_AT);
    expect(await removeDemo(db, LATER_AT)).toMatchObject({ ok: false, code: 'no-demo' });
  });

  it('keeps what an own batch of a demo model rests on, and says so', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    await openOwnBatch(db, 'demo-mallet-b');
    const result = await removeDemo(db, LATER_AT);
    expect(result).toMatchObject({ ok: true, batches: 6, models: 3 });
    expect(result.ok && result.kept.map(({ kind, name }) => `${kind}: ${name}`)).toEqual([
      'model: Mallet jerkbait',
      'material: Demo epoxy, 60 minutes',
      'material: Demo split ring, 8 mm',
      'material: Demo topcoat, clear',
      'material: Demo treble hook, size 2',
      'person: Ida',
    ]);
    expect((await db.revision.findMany({ select: { id: true } })).map(({ id }) => id)).toEqual(['demo-mallet-b']);
    expect(await db.batch.findMany({ select: { id: true, number: true, lastSeq: true } })).toEqual([
      { id: 'own-batch-1', number: 27, lastSeq: 1 },
    ]);
    expect(await db.joint.count()).toBe(6);
    expect(await db.batchEvent.findFirst()).toMatchObject({ personId: 'demo-ida' });
    expect(await db.person.findFirst({ where: { id: 'demo-ida' } })).toMatchObject({ isActive: false });
  });

  it('keeps a demo model with an own revision, a changed sheet, and own lots', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    const at = new Date(LATER_AT);
    await db.revision.create({
      data: {
        id: 'own-rev',
        modelId: 'demo-model-kettle',
        letter: 'B',
        lengthMm: 70,
        profile: [],
        note: '',
        createdAt: at,
        updatedAt: at,
      },
    });
    await db.material.update({ where: { id: 'demo-epoxy-5' }, data: { version: 2 } });
    await db.lot.create({
      data: {
        materialId: 'demo-epoxy-60',
        code: 'Mine',
        part: 'resin',
        quantity: 1,
        quantityUnit: 'g',
        receivedOn: '2026-02-10',
        supplierNote: '',
        createdAt: at,
      },
    });
    const result = await removeDemo(db, LATER_AT);
    expect(result.ok && result.kept.map(({ kind, name, reason }) => `${kind}: ${name}, ${reason}`)).toEqual([
      'model: Kettle popper, you opened batches of it or made a revision of your own',
      'material: Demo epoxy, 5 minutes, you changed its figures',
      'material: Demo epoxy, 60 minutes, your own models, batches, lots or pull tests use it',
    ]);
    expect((await db.revision.findMany()).map(({ id }) => id)).toEqual(['own-rev']);
    expect((await db.lot.findMany()).map(({ code }) => code)).toEqual(['Mine']);
  });

  it('keeps own readings on the demo logger and drops the demo readings', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW_AT);
    await db.reading.create({ data: { sensorId: 'demo-sensor', atMs: BigInt(LATER_AT), temperatureC: 19 } });
    const result = await removeDemo(db, LATER_AT);
    expect(result.ok && result.kept.map(({ kind, name }) => `${kind}: ${name}`)).toEqual(['sensor: Bench logger']);
    expect((await db.reading.findMany()).map(({ temperatureC }) => temperatureC)).toEqual([19]);
    expect(await getShop(db)).toMatchObject({ cureSensorId: 'demo-sensor', demoLoadedAt: null });
    expect(await db.sensor.findFirst()).toMatchObject({ version: 2 });
  });
});
