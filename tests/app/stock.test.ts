import { expect, test } from 'vitest';
import { addLot } from '@/app/_commands/add-lot';
import { addMaterial } from '@/app/_commands/add-material';
import { removeLot } from '@/app/_commands/remove-lot';
import { saveLot } from '@/app/_commands/save-lot';
import { saveSheet } from '@/app/_commands/save-sheet';
import { setMaterialArchived } from '@/app/_commands/set-material-archived';
import type { LotInput, MaterialKind } from '@/lib/contracts/material-forms';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Db } from '@/prisma/client';
import { findLot, listLotPage } from '@/prisma/data/lots';
import { findMaterial, listMaterialChoices, listMaterialPage } from '@/prisma/data/materials';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);

const SHEET: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 13,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'gel' }],
  milestoneHours: { handle: 8 },
  sources: { handle: { kind: 'data-sheet', text: 'Sheet 12' } },
};

async function material(db: Db, name: string, kind: MaterialKind = 'adhesive'): Promise<string> {
  const result = await addMaterial(db, { name, kind, note: '' }, NOW);
  if (!result.ok) throw new Error(result.message);
  return result.materialId;
}

function lot(code: string, more: Partial<Omit<LotInput, 'unit' | 'quantity'>> = {}): LotInput {
  const shared = { receivedOn: '2026-01-10', openedOn: null, expiresOn: null, supplierNote: '', priceMinor: null };
  return { code, part: 'resin', ...shared, unit: 'g', quantity: 500, ...more };
}

describeBothDatabases('stock', (makeDb) => {
  test('two materials do not share a name, in whatever case', async () => {
    const db = await makeDb();
    await material(db, 'Basswood', 'wood');
    const again = await addMaterial(db, { name: 'BASSWOOD', kind: 'wood', note: '' }, NOW);
    expect(again).toMatchObject({ ok: false, code: 'name-taken', field: 'name' });
  });

  test('a data sheet comes back as it was saved, and raises the version', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    const input = { sheet: SHEET, sheetRevision: '3', sheetOn: '2026-01-02', seenVersion: 1 };
    expect(await saveSheet(db, id, input, NOW)).toEqual({ ok: true });
    expect(await findMaterial(db, id)).toMatchObject({ sheet: SHEET, sheetRevision: '3', version: 2 });
    expect(await saveSheet(db, id, input, NOW)).toMatchObject({ ok: false, code: 'changed-meanwhile' });
  });

  test('wood has no data sheet of cure, and does not come as resin', async () => {
    const db = await makeDb();
    const id = await material(db, 'Basswood', 'wood');
    const input = { sheet: SHEET, sheetRevision: '', sheetOn: null, seenVersion: 1 };
    expect(await saveSheet(db, id, input, NOW)).toMatchObject({ code: 'no-sheet-kind' });
    expect(await addLot(db, id, lot('1'), NOW)).toMatchObject({ code: 'part-not-whole', field: 'part' });
  });

  test('a lot code may stand once for the resin and once for the hardener of a material', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    expect(await addLot(db, id, lot('A-1'), NOW)).toMatchObject({ ok: true });
    expect(await addLot(db, id, lot('A-1', { part: 'hardener' }), NOW)).toMatchObject({ ok: true });
    expect(await addLot(db, id, lot('A-1'), NOW)).toMatchObject({ code: 'code-taken', field: 'code' });
    expect(await addLot(db, 'gone', lot('A-2'), NOW)).toMatchObject({ code: 'no-material' });
  });

  test('a lot can be corrected, but not onto the code of another', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    await addLot(db, id, lot('A-1'), NOW);
    const second = await addLot(db, id, lot('A-2'), NOW);
    const lotId = second.ok ? second.lotId : '';
    expect(await saveLot(db, lotId, lot('A-1'))).toMatchObject({ code: 'code-taken' });
    expect(await saveLot(db, lotId, lot('A-3', { openedOn: '2026-02-01' }))).toEqual({ ok: true });
    expect(await findLot(db, lotId)).toMatchObject({ code: 'A-3', openedOn: '2026-02-01', materialName: 'Glue' });
  });

  test('a lot entered by mistake can be removed; one that went into a mix cannot', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    const [wrong, used] = [await addLot(db, id, lot('wrong'), NOW), await addLot(db, id, lot('used'), NOW)];
    const usedId = used.ok ? used.lotId : '';
    await putIntoMix(db, id, usedId);
    expect(await removeLot(db, wrong.ok ? wrong.lotId : '')).toEqual({ ok: true });
    expect(await removeLot(db, usedId)).toMatchObject({ ok: false, code: 'lot-used' });
    expect((await listLotPage(db, ALL_LOTS)).lots.map((row) => row.code)).toEqual(['used']);
  });

  test('lots are listed in pages, the last received first, and the expired by themselves', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    await addLot(db, id, lot('old', { receivedOn: '2025-01-01', expiresOn: '2026-03-11' }), NOW);
    await addLot(db, id, lot('today', { receivedOn: '2026-02-01', expiresOn: '2026-03-12' }), NOW);
    await addLot(db, id, lot('never', { receivedOn: '2026-03-01' }), NOW);
    const codes = async (more: object) => (await listLotPage(db, { ...ALL_LOTS, ...more })).lots.map((row) => row.code);
    expect(await codes({})).toEqual(['never', 'today', 'old']);
    expect(await codes({ expiredBefore: '2026-03-12' })).toEqual(['old']);
    expect(await codes({ page: 1, pageSize: 2 })).toEqual(['old']);
    expect(await codes({ materialId: 'gone' })).toEqual([]);
  });

  test('an archived material is no choice any more, and stands in its own list', async () => {
    const db = await makeDb();
    const id = await material(db, 'Glue');
    await material(db, 'Basswood', 'wood');
    await setMaterialArchived(db, id, true, NOW);
    expect((await listMaterialChoices(db)).map((choice) => choice.name)).toEqual(['Basswood']);
    const search = { kind: null, text: '', isArchived: true, page: 0, pageSize: 10 };
    expect((await listMaterialPage(db, search)).lines.map((line) => line.name)).toEqual(['Glue']);
    expect((await listMaterialPage(db, { ...search, kind: 'wood' })).total).toBe(0);
  });
});

const ALL_LOTS = { materialId: null, text: '', expiredBefore: null, page: 0, pageSize: 50 };

async function putIntoMix(db: Db, materialId: string, lotId: string): Promise<void> {
  const at = new Date(NOW);
  await db.model.create({
    data: {
      name: 'Minnow',
      note: '',
      createdAt: at,
      revisions: {
        create: {
          letter: 'A',
          lengthMm: 75,
          profile: [],
          note: '',
          createdAt: at,
          updatedAt: at,
          batches: {
            create: {
              id: 'batch',
              number: 1,
              quantity: 1,
              status: 'open',
              lastSeq: 0,
              orderNote: '',
              openedAt: at,
            },
          },
        },
      },
    },
  });
  const lots = { create: { lotId } };
  await db.mix.create({ data: { id: 'mix', batchId: 'batch', number: 1, materialId, massG: 10, mixedAt: at, lots } });
}
