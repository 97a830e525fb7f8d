import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';

/** A Tuesday evening in the shop of the tests, whose zone is UTC and whose profile holds 25 degC all week. */
export const EVENING: Instant = Date.UTC(2026, 2, 10, 18, 0);

/** Figures chosen so that hours at 25 degC are easy to follow: handle 4 h, paint 24 h, recoat 4 to 24 h. */
export const TEST_SHEET: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' }],
  milestoneHours: { handle: 4, sand: 12, 'recoat-from': 4, 'recoat-by': 24, paint: 24, 'pull-test': 72, ship: 168 },
  maxMassG: 200,
  sources: {},
};

export const ANCHORS = ['line-tie', 'belly', 'tail'] as const;

/** Puts one shop, two materials with lots, and the draft revision "rev" into an empty database. */
export async function insertTestWorkshop(db: Db): Promise<void> {
  const at = new Date(EVENING - 40 * 24 * 3_600_000);
  await db.shop.create({
    data: {
      id: 1,
      name: 'Test shop',
      timeZone: 'UTC',
      lengthUnit: 'mm',
      temperatureUnit: 'C',
      massUnit: 'g',
      forceUnit: 'N',
      currency: 'EUR',
      temperatureProfile: { otherwiseC: 25, periods: [] },
      profileToleranceC: 0,
      floorC: 20,
      ceilingC: 30,
      sensorToleranceC: 0,
      cureSensorId: null,
      createdAt: at,
      updatedAt: at,
    },
  });
  await db.person.create({ data: { id: 'ada', name: 'Ada', skills: [], createdAt: at } });
  await db.person.create({ data: { id: 'ben', name: 'Ben', skills: [], createdAt: at } });
  for (const [id, kind, figures] of [
    ['glue', 'adhesive', TEST_SHEET],
    ['gloss', 'coating', TEST_SHEET],
    ['bare', 'adhesive', null],
  ] as const) {
    await db.material.create({
      data: {
        id,
        kind,
        name: `Test ${id}`,
        ...(figures === null ? {} : { figures: JSON.parse(JSON.stringify(figures)) }),
        sheetRevision: '',
        note: '',
        createdAt: at,
        updatedAt: at,
        lots: {
          create: {
            id: `${id}-lot`,
            code: 'L1',
            part: 'whole',
            quantity: 500,
            quantityUnit: 'g',
            supplierNote: '',
            receivedOn: '2026-01-05',
            createdAt: at,
          },
        },
      },
    });
  }
  await insertTestRevision(db, 'rev', at);
}

/** A draft revision: shape, glue three eyes, paint, first coat, second coat, pack. */
export async function insertTestRevision(db: Db, id: string, at: Date): Promise<void> {
  await db.model.create({
    data: {
      name: `Test lure ${id}`,
      note: '',
      createdAt: at,
      revisions: {
        create: { id, letter: 'A', lengthMm: 100, profile: [], note: '', createdAt: at, updatedAt: at },
      },
    },
  });
  for (const [position, name] of ANCHORS.entries()) {
    await db.anchor.create({
      data: { id: `${id}-${name}`, revisionId: id, position, name, role: 'belly-hanger', kind: 'twisted-wire' },
    });
  }
  const operations = [
    ['shape', 'work', null, 'dust', []],
    ['glue', 'glue', 'glue', 'epoxy', [['shape', 'done']]],
    ['paint', 'work', null, 'solvent', [['glue', 'paint']]],
    ['coat-1', 'coat', 'gloss', 'epoxy', [['paint', 'done']]],
    ['coat-2', 'coat', 'gloss', 'epoxy', [['coat-1', 'recoat']]],
    ['pack', 'work', null, 'none', [['coat-2', 'ship']]],
  ] as const;
  for (const [position, [name, kind, materialId, caution, needs]] of operations.entries()) {
    await db.routeOperation.create({
      data: {
        id: `${id}-${name}`,
        revisionId: id,
        position,
        name,
        kind,
        attendedMinutes: 2,
        materialId,
        anchorPositions: [],
        caution,
        needs: { create: needs.map(([after, wait]) => ({ afterOperationId: `${id}-${after}`, wait })) },
      },
    });
  }
}
