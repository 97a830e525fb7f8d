import { pullPlanSchema, storedCalibrationSchema } from '@/lib/contracts/pull-plan';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';
import { getShop, saveShop, untouchedShop } from '@/prisma/data/shop';
import { BROUGHT_BY_DEMO, DEMO_SENSOR_ID, DEMO_SHOP_NAME } from '@/prisma/seed/demo/demo-id';
import { DEMO_RATES } from '@/prisma/seed/demo/demo-stock';
import { demoInstants } from '@/prisma/seed/demo/demo-temperature';
import type { Refusal } from './command-result';

/** Something of the demo workshop that stays, because the maker's own records rest on it. */
interface KeptFromDemo {
  readonly kind: 'model' | 'material' | 'lot' | 'person' | 'sensor';
  readonly name: string;
  /** Why it stays, as the end of "it stays because ...". */
  readonly reason: string;
}

export type RemoveDemoResult =
  | { readonly ok: true; readonly batches: number; readonly models: number; readonly kept: readonly KeptFromDemo[] }
  | Refusal<'no-demo'>;

/**
 * Takes the demo workshop out again, all of it in one transaction. Batches of the demo go with everything logged on
 * them. What the maker added stays: own batches, models, revisions, materials, lots, people and readings, and with
 * them whatever of the demo they use. Settings stay as they are, but for the shop's demo name.
 */
export function removeDemo(database: Db, nowAt: Instant): Promise<RemoveDemoResult> {
  return writeTx(database, async (tx) => {
    const { demoLoadedAt, name } = await getShop(tx);
    if (demoLoadedAt === null) {
      return {
        ok: false,
        code: 'no-demo',
        message: 'There is no demo workshop in this database. Nothing was changed.',
      };
    }
    await removeBooks(tx);
    const { count: batches } = await tx.batch.deleteMany({ where: { id: BROUGHT_BY_DEMO } });
    await removePulls(tx);
    const models = await removeModels(tx);
    await tx.resource.deleteMany({ where: { id: BROUGHT_BY_DEMO, operations: { none: {} } } });
    const lots = await removeLots(tx);
    const materials = await removeMaterials(tx);
    const people = await removePeople(tx);
    const sensors = await removeReadings(tx, demoLoadedAt);
    await saveShop(
      tx,
      {
        ...(name === DEMO_SHOP_NAME ? { name: untouchedShop().name } : {}),
        ...(sensors.length === 0 ? await withoutDemoSensor(tx) : {}),
      },
      nowAt,
    );
    await tx.shop.updateMany({ data: { demoLoadedAt: null } });
    await tx.shop.updateMany({ where: DEMO_RATES, data: { labourPerHourMinor: null, marginShare: null } });
    return {
      ok: true,
      batches,
      models: models.removed,
      kept: [...models.kept, ...materials, ...lots, ...people, ...sensors],
    };
  });
}

/** The demo's series, with the calibrations that rest on nothing else. */
async function removePulls(tx: Tx): Promise<void> {
  await tx.pullSeries.deleteMany({ where: { id: BROUGHT_BY_DEMO } });
  for (const { id, body } of await tx.calibration.findMany({ select: { id: true, body: true } })) {
    const { seriesIds } = storedCalibrationSchema.parse(body);
    if (seriesIds.every((seriesId) => seriesId.startsWith(BROUGHT_BY_DEMO.startsWith))) {
      await tx.calibration.delete({ where: { id } });
    }
  }
  await tx.scale.deleteMany({ where: { id: BROUGHT_BY_DEMO, pulls: { none: {} } } });
}

/** Materials that series and calibrations of the maker's own name. */
async function materialsOfPulls(tx: Tx): Promise<string[]> {
  const series = await tx.pullSeries.findMany({ select: { plan: true } });
  const named = series
    .flatMap(({ plan }) => pullPlanSchema.parse(plan).conditions)
    .flatMap(({ woodMaterialId, adhesiveMaterialId, wireMaterialId }) => [
      woodMaterialId,
      adhesiveMaterialId,
      wireMaterialId,
    ]);
  const calibrations = await tx.calibration.findMany({
    select: { woodMaterialId: true, adhesiveMaterialId: true, wireMaterialId: true },
  });
  return [...named, ...calibrations.flatMap((row) => Object.values(row))].flatMap((id) => id ?? []);
}

async function removeModels(tx: Tx): Promise<{ removed: number; kept: readonly KeptFromDemo[] }> {
  await tx.revision.deleteMany({ where: { id: BROUGHT_BY_DEMO, batches: { none: {} } } });
  const { count: removed } = await tx.model.deleteMany({ where: { id: BROUGHT_BY_DEMO, revisions: { none: {} } } });
  const rest = await tx.model.findMany({ where: { id: BROUGHT_BY_DEMO }, orderBy: { name: 'asc' } });
  const reason = 'you opened batches of it or made a revision of your own';
  return { removed, kept: rest.map(({ name }) => ({ kind: 'model', name, reason })) };
}

/**
 * Call it before the batches go. A lot of the demo with nothing but the demo's own movements goes with its book;
 * one that the maker moved stays with all of it. Corrections go before what they correct.
 */
async function removeBooks(tx: Tx): Promise<void> {
  // A batch that is not named must be asked for by itself: it is neither like the demo's nor unlike them.
  const ofMaker = { NOT: { id: BROUGHT_BY_DEMO }, OR: [{ batchId: null }, { NOT: { batchId: BROUGHT_BY_DEMO } }] };
  const untouched = { id: BROUGHT_BY_DEMO, movements: { none: ofMaker } };
  const usedElsewhere = { some: { mix: { NOT: { batchId: BROUGHT_BY_DEMO } } } };
  const lots = await tx.lot.findMany({
    where: { ...untouched, NOT: { mixLots: usedElsewhere } },
    select: { id: true },
  });
  for (const ids of chunked(lots.map((lot) => lot.id))) {
    await tx.stockMovement.deleteMany({ where: { lotId: { in: ids }, NOT: { correctsId: null } } });
    await tx.stockMovement.deleteMany({ where: { lotId: { in: ids } } });
  }
}

async function removeLots(tx: Tx): Promise<readonly KeptFromDemo[]> {
  await tx.lot.deleteMany({ where: { id: BROUGHT_BY_DEMO, mixLots: { none: {} }, movements: { none: {} } } });
  const rest = await tx.lot.findMany({ where: { id: BROUGHT_BY_DEMO }, orderBy: { code: 'asc' } });
  return rest.map(({ code }) => ({ kind: 'lot', name: code, reason: 'you mixed or took from it' }));
}

/** Call it after the batches, models and lots: what is still used then is used by the maker's own records. */
async function removeMaterials(tx: Tx): Promise<readonly KeptFromDemo[]> {
  const unused = { none: {} };
  await tx.material.deleteMany({
    where: {
      id: { ...BROUGHT_BY_DEMO, notIn: await materialsOfPulls(tx) },
      version: 1,
      lots: unused,
      revisions: unused,
      wireAnchors: unused,
      glueAnchors: unused,
      hookAnchors: unused,
      ringAnchors: unused,
      operations: unused,
      billLines: unused,
      mixes: unused,
    },
  });
  const rest = await tx.material.findMany({ where: { id: BROUGHT_BY_DEMO }, orderBy: { name: 'asc' } });
  return rest.map(({ name, version }) => ({
    kind: 'material',
    name,
    reason: version > 1 ? 'you changed its figures' : 'your own models, batches, lots or pull tests use it',
  }));
}

/** Whoever is named by records that stay is kept as having left the shop. */
async function removePeople(tx: Tx): Promise<readonly KeptFromDemo[]> {
  const unnamed = { none: {} };
  await tx.person.deleteMany({
    where: {
      id: BROUGHT_BY_DEMO,
      events: unnamed,
      pulls: unnamed,
      pullChanges: unnamed,
      calibrations: unnamed,
      waivers: unnamed,
      movements: unnamed,
    },
  });
  await tx.person.updateMany({ where: { id: BROUGHT_BY_DEMO }, data: { isActive: false } });
  const rest = await tx.person.findMany({ where: { id: BROUGHT_BY_DEMO }, orderBy: { name: 'asc' } });
  return rest.map(({ name }) => ({ kind: 'person', name, reason: 'records of yours name this person' }));
}

/** A sensor that took in readings of the maker's own stays with those; the demo's readings go. */
async function removeReadings(tx: Tx, demoLoadedAt: Instant): Promise<readonly KeptFromDemo[]> {
  const sensor = await tx.sensor.findUnique({
    where: { id: DEMO_SENSOR_ID },
    select: { name: true, _count: { select: { imports: true, tokens: true } } },
  });
  if (sensor === null) return [];
  const later = await tx.reading.count({ where: { sensorId: DEMO_SENSOR_ID, atMs: { gt: BigInt(demoLoadedAt) } } });
  if (later + sensor._count.imports + sensor._count.tokens === 0) {
    await tx.sensor.delete({ where: { id: DEMO_SENSOR_ID } });
    return [];
  }
  for (const instants of chunked(demoInstants(demoLoadedAt).map(BigInt))) {
    await tx.reading.deleteMany({ where: { sensorId: DEMO_SENSOR_ID, atMs: { in: instants } } });
  }
  await tx.sensor.update({ where: { id: DEMO_SENSOR_ID }, data: { version: { increment: 1 } } });
  return [
    { kind: 'sensor', name: sensor.name, reason: 'it has readings or a key of yours; the demo readings are gone' },
  ];
}

async function withoutDemoSensor(tx: Tx): Promise<{ cureSensorId?: null }> {
  return (await getShop(tx)).cureSensorId === DEMO_SENSOR_ID ? { cureSensorId: null } : {};
}
