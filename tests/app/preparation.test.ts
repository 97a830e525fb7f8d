import { expect, it } from 'vitest';
import { issueStock } from '@/app/_commands/issue-stock';
import { makePreparation } from '@/app/_commands/make-preparation';
import { openBatch } from '@/app/_commands/open-batch';
import { tickPreparation } from '@/app/_commands/tick-preparation';
import { weighBack } from '@/app/_commands/weigh-back';
import { USUAL_CHOICES } from '@/lib/prepare/preparation';
import type { Db } from '@/prisma/client';
import { findPreparation } from '@/prisma/data/preparations';
import { listLotBooks, listMovementPage } from '@/prisma/data/stock';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop } from './test-workshop';

const CHOICES = { ...USUAL_CHOICES, temperatureC: 21 };

/** A batch of two with three eyes each, prepared from 2 m of wire; `press` ticks its first length. */
async function preparedWithWire(db: Db, rodMm: number | null) {
  await insertTestWorkshop(db);
  const createdAt = new Date(EVENING);
  const wire = { id: 'wire', kind: 'wire', name: 'Soft wire', sheetRevision: '', note: '', createdAt };
  await db.material.create({ data: { ...wire, updatedAt: createdAt } });
  const coil = { id: 'coil', materialId: 'wire', code: 'Coil', part: 'whole', quantity: 2000, quantityUnit: 'mm' };
  await db.lot.create({ data: { ...coil, receivedOn: '2026-01-05', supplierNote: '', createdAt } });
  const eye = { kind: 'twisted-wire', wireMaterialId: 'wire', wireDiameterMm: 0.9, twistPitchMm: 6, eyeInsideMm: 3 };
  const hole = { bitDiameterMm: 2.5, drillDepthMm: 25, embedmentMm: 25 };
  await db.anchor.updateMany({ where: { revisionId: 'rev' }, data: { ...eye, ...hole } });
  const form = { revisionId: 'rev', quantity: 2, dueOn: null, orderNote: '', personId: null, now: EVENING };
  await openBatch(db, { ...form, batchId: 'batch-with-wire' });
  await makePreparation(db, 'batch-with-wire', { ...CHOICES, rodMm }, EVENING);
  const stored = await findPreparation(db, 'batch-with-wire');
  if (stored === null) throw new Error('not stored');
  const press = (isDone: boolean, key: string) =>
    tickPreparation(
      db,
      { preparationId: stored.id, item: 'cut:wire:1', isDone, key },
      { personId: 'ada', nowAt: EVENING },
    );
  const lots = async () => [...(await listLotBooks(db, ['coil'])).values()].map(({ leftMilli }) => leftMilli / 1000);
  return { db, stored, lots, press };
}

describeBothDatabases('preparing a batch', (openDatabase) => {
  it('keeps the plan and what was ticked off, once, with who was first', async () => {
    const db = await openDatabase();
    await insertTestWorkshop(db);
    const opened = await openBatch(db, {
      batchId: 'batch-to-prepare',
      revisionId: 'rev',
      quantity: 4,
      dueOn: null,
      orderNote: '',
      personId: null,
      now: EVENING,
    });
    if (!opened.ok) throw new Error(opened.message);
    expect(await makePreparation(db, 'nowhere', CHOICES, EVENING)).toMatchObject({ ok: false, code: 'no-batch' });
    expect(await makePreparation(db, opened.batchId, CHOICES, EVENING)).toEqual({ ok: true });
    const stored = await findPreparation(db, opened.batchId);
    if (stored === null) throw new Error('not stored');
    // The test revision has neither figures of its anchors nor a profile: nothing is guessed.
    expect(stored.body.cards.map((card) => card.obstacle)).toEqual(['anchor-figures', 'no-body', 'no-body']);
    const tick = { preparationId: stored.id, item: 'mix:glue:1:a', isDone: true, key: 'tick-key-1' };
    await tickPreparation(db, tick, { personId: 'ada', nowAt: EVENING });
    await tickPreparation(db, tick, { personId: 'ben', nowAt: EVENING + 1000 });
    const again = await findPreparation(db, opened.batchId);
    expect(again?.ticks.get(tick.item)).toEqual({ at: EVENING, personName: 'Ada' });
    await tickPreparation(db, { ...tick, isDone: false }, { personId: 'ben', nowAt: EVENING + 2000 });
    await makePreparation(db, opened.batchId, { ...CHOICES, arrangement: 'traceable' }, EVENING + 3000);
    const anew = await findPreparation(db, opened.batchId);
    expect(anew).toMatchObject({ number: 2, body: { choices: { arrangement: 'traceable' } } });
    expect(anew?.ticks.size).toBe(0);
    expect(
      await tickPreparation(db, { ...tick, preparationId: 'gone' }, { personId: null, nowAt: EVENING }),
    ).toMatchObject({ ok: false, code: 'no-preparation' });
  });

  it('takes the wire that is cut from its lot, once, and gives it back when the tick is taken back', async () => {
    const { db, stored, lots, press } = await preparedWithWire(await openDatabase(), null);
    // Two pieces with three eyes of 87.53 mm, each cut at 88, and 5 mm lost at the end: 533 mm.
    expect(stored.body.cuts).toMatchObject([
      { bars: [{ stockId: 'coil', lengthMm: 2000, offcutMm: 1467, isKept: true }] },
    ]);
    expect(await press(true, 'cut-key-1')).toEqual({ ok: true });
    expect(await lots()).toEqual([1467]);
    // The answer got lost and it is sent again; somebody else presses too.
    await press(true, 'cut-key-1');
    await press(true, 'cut-key-2');
    expect(await lots()).toEqual([1467]);
    expect(await press(false, 'cut-key-3')).toEqual({ ok: true });
    expect(await lots()).toEqual([2000]);
    // What was sent long ago arrives late: the tick stays taken back.
    await press(true, 'cut-key-1');
    expect(await lots()).toEqual([2000]);
    expect((await findPreparation(db, 'batch-with-wire'))?.ticks.size).toBe(0);
    await press(true, 'cut-key-4');
    await press(false, 'cut-key-3');
    expect(await lots()).toEqual([1467]);
    const { movements } = await listMovementPage(db, { lotId: 'coil', page: 0, pageSize: 9 });
    expect(movements.map(({ kind, quantity, batch }) => [kind, quantity, batch?.id])).toEqual([
      ['issue', -533, 'batch-with-wire'],
      ['correction', 533, 'batch-with-wire'],
      ['issue', -533, 'batch-with-wire'],
    ]);
  });

  it('takes a whole rod of a bundle, and refuses wire that is gone since, keeping the line open', async () => {
    const { db, lots, press } = await preparedWithWire(await openDatabase(), 1000);
    expect(await press(true, 'rod-key-1')).toEqual({ ok: true });
    expect(await lots()).toEqual([1000]);
    await press(false, 'rod-key-2');
    const milli = 1_500_000;
    const taken = { milli, foundLeftMilli: null, batchId: null, reason: 'other work', key: 'rod-key-3' };
    await issueStock(db, 'coil', taken, { personId: null, nowAt: EVENING });
    expect(await press(true, 'rod-key-4')).toMatchObject({ ok: false, code: 'not-enough' });
    expect(await lots()).toEqual([500]);
    expect((await findPreparation(db, 'batch-with-wire'))?.ticks.size).toBe(0);
  });

  it('cuts from a coil that is kept by weight, by the diameter and the alloy of the wire', async () => {
    const { db } = await preparedWithWire(await openDatabase(), null);
    const sheet = { alloy: 'stainless-302-304', temper: 'soft', diameterMm: 0.9, sources: {} };
    await db.lot.update({ where: { id: 'coil' }, data: { quantityUnit: 'g', quantity: 10 } });
    await makePreparation(db, 'batch-with-wire', CHOICES, EVENING);
    const blind = await findPreparation(db, 'batch-with-wire');
    expect(blind?.body.cuts).toMatchObject([{ obstacle: 'too-long' }]);
    await db.material.update({ where: { id: 'wire' }, data: { figures: sheet } });
    await makePreparation(db, 'batch-with-wire', CHOICES, EVENING);
    const stored = await findPreparation(db, 'batch-with-wire');
    // A metre weighs pi / 4 x 0.9^2 x 7.93 = 5.0449 g: 10 g are 1982 mm, and 533 mm are 2.689 g.
    expect(stored?.body.cuts).toMatchObject([{ bars: [{ stockId: 'coil', lengthMm: 1982, offcutMm: 1449 }] }]);
    const tick = { preparationId: stored?.id ?? '', item: 'cut:wire:1', isDone: true, key: 'gram-key-1' };
    expect(await tickPreparation(db, tick, { personId: null, nowAt: EVENING })).toEqual({ ok: true });
    expect((await listLotBooks(db, ['coil'])).get('coil')?.leftMilli).toBe(10_000 - 2689);
  });

  it('keeps what was left of the cups, and counts with it from the third weighing on', async () => {
    const { db, stored } = await preparedWithWire(await openDatabase(), null);
    const operationId = stored.body.cards[0]?.operationId ?? '';
    const newest = async () => {
      const found = await findPreparation(db, 'batch-with-wire');
      if (found === null) throw new Error('not stored');
      return found;
    };
    const weigh = (preparationId: string, leftG: number, mixedG = 10) =>
      weighBack(db, { preparationId, operationId, mixedG, leftG });
    expect(await weigh(stored.id, 10)).toMatchObject({ ok: false, code: 'more-left', field: 'leftG' });
    expect(await weigh('gone', 1)).toMatchObject({ ok: false, code: 'no-preparation' });
    const usedG = 2 * (stored.body.cards[0]?.netG ?? 0);
    for (const count of [0, 0, 3]) {
      const { id } = await newest();
      expect(await weigh(id, 1)).toEqual({ ok: true });
      expect(await weigh(id, 10 - usedG)).toEqual({ ok: true });
      await makePreparation(db, 'batch-with-wire', CHOICES, EVENING);
      expect((await newest()).body.cards[0]?.wasteCount).toBe(count);
    }
    expect((await newest()).body.cards[0]?.waste).toBeCloseTo(2, 9);
  });

  it('lets one of two phones cut the same length', async () => {
    const { lots, press } = await preparedWithWire(await openDatabase(), null);
    expect(await Promise.all([press(true, 'phone-key-a'), press(true, 'phone-key-b')])).toEqual([
      { ok: true },
      { ok: true },
    ]);
    expect(await lots()).toEqual([1467]);
  });
});
