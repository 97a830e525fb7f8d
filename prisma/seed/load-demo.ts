import { createHash } from 'node:crypto';
import type { MixState } from '@/lib/batch/batch-state';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan } from '@/lib/batch/plan';
import { takenFindings } from '@/lib/spec/taken-findings';
import type { Instant } from '@/lib/units/instant';
import type { Db, Tx } from '@/prisma/client';
import { writeTx } from '@/prisma/client';
import { findRevisionRoute } from '@/prisma/data/batch-plan';
import { saveRows } from '@/prisma/data/batch-rows';
import { chunked } from '@/prisma/data/batches';
import { appendPullChange, json } from '@/prisma/data/pull-series';
import { getShop, type ShopChange, saveShop } from '@/prisma/data/shop';
import { judgeRevision } from '@/prisma/data/spec-reports';
import type { DemoBatch } from './demo/batch-story';
import { demoBatches } from './demo/demo-batches';
import { DEMO_SENSOR_ID, DEMO_SHOP_NAME, demoId } from './demo/demo-id';
import { demoLots, demoMaterials } from './demo/demo-materials';
import { DEMO_PEOPLE } from './demo/demo-people';
import { DEMO_RESOURCES } from './demo/demo-planning';
import { demoPulls } from './demo/demo-pulls';
import { DEMO_RATES } from './demo/demo-stock';
import { DEMO_PROFILE, demoReadings } from './demo/demo-temperature';
import { type DemoTimes, dayFromNow, demoTimes } from './demo/demo-times';
import { insertModels } from './demo/insert-models';
import { type DemoCups, insertStock } from './demo/insert-stock';
import { isEmptyWorkshop } from './empty-workshop';
import { insertMaterials } from './load-starting-materials';
import { STARTING_MATERIALS } from './starting-materials';

export type LoadDemoResult =
  | { readonly ok: true; readonly batches: number; readonly readings: number }
  | { readonly ok: false; readonly code: 'not-empty'; readonly message: string };

/** Settings of the demo workshop, for a shop that has none yet. */
const DEMO_SHOP: ShopChange = {
  name: DEMO_SHOP_NAME,
  timeZone: 'America/Chicago',
  lengthUnit: 'inch',
  temperatureUnit: 'F',
  massUnit: 'g',
  forceUnit: 'lbf',
  currency: 'USD',
  temperatureProfile: DEMO_PROFILE,
  profileToleranceC: 2,
  floorC: 4,
  ceilingC: 26,
  sensorToleranceC: 0.5,
};

/**
 * Puts the demo workshop into an empty database: people, glues, lots, models, two weeks of temperature, and six
 * batches whose hours are told from `nowAt`. All of it or nothing. A shop that only has settings and the starting
 * materials counts as empty and keeps its settings; the demo's evenings are then evenings in that shop's zone.
 */
export function loadDemo(database: Db, nowAt: Instant): Promise<LoadDemoResult> {
  return writeTx(database, async (tx) => {
    if (!(await isEmptyWorkshop(tx))) {
      const message =
        'The demo workshop can only be put into an empty database: this one has records. Nothing was changed.';
      return { ok: false, code: 'not-empty', message };
    }
    const isNewShop = (await tx.shop.count()) === 0;
    await saveShop(tx, isNewShop ? DEMO_SHOP : {}, nowAt);
    const times = demoTimes(nowAt, (await getShop(tx)).timeZone);
    await insertPeople(tx, times);
    await insertMaterials(tx, [...STARTING_MATERIALS, ...demoMaterials(times)], nowAt);
    await tx.lot.createMany({ data: demoLots(times).map((lot) => ({ ...lot, createdAt: new Date(nowAt) })) });
    await tx.resource.createMany({ data: DEMO_RESOURCES.map((row) => ({ ...row, createdAt: new Date(nowAt) })) });
    await insertModels(tx, times);
    const readings = await insertReadings(tx, times);
    const batches = demoBatches(times);
    const cups: DemoCups[] = [];
    for (const batch of batches) cups.push({ batchId: batch.id, mixes: await insertBatch(tx, batch) });
    await insertPulls(tx, times);
    await insertStock(tx, times, cups);
    await saveShop(tx, { cureSensorId: DEMO_SENSOR_ID }, nowAt);
    await tx.shop.updateMany({ data: { demoLoadedAt: new Date(nowAt), ...(isNewShop ? DEMO_RATES : {}) } });
    return { ok: true, batches: batches.length, readings };
  });
}

async function insertPeople(tx: Tx, times: DemoTimes): Promise<void> {
  const createdAt = new Date(times.nowAt);
  for (const { id, name, skills, benchHours } of DEMO_PEOPLE) {
    await tx.person.create({
      data: {
        id,
        name,
        skills: [...skills],
        createdAt,
        benchHours: { create: benchHours.map((hours) => ({ ...hours })) },
      },
    });
    if (name !== 'Marlo') continue;
    const onDate = dayFromNow(times, 5);
    await tx.benchException.create({
      data: { id: demoId('away'), personId: id, onDate, fromMinute: null, toMinute: null, reason: 'Family visit' },
    });
  }
}

async function insertReadings(tx: Tx, times: DemoTimes): Promise<number> {
  const createdAt = new Date(times.nowAt);
  await tx.sensor.create({
    data: { id: DEMO_SENSOR_ID, name: 'Bench logger', place: 'Beside the drying rack', createdAt },
  });
  const rows = demoReadings(times).map(({ at, temperatureC, humidityPct }) => ({
    sensorId: DEMO_SENSOR_ID,
    atMs: BigInt(at),
    temperatureC,
    humidityPct,
  }));
  for (const data of chunked(rows, 200)) await tx.reading.createMany({ data });
  return rows.length;
}

async function insertPulls(tx: Tx, times: DemoTimes): Promise<void> {
  const { timeZone: zone, temperatureProfile: profile, ...shop } = await getShop(tx);
  const digest = (text: string) => createHash('sha256').update(text).digest('hex');
  const { scale, series, mixes, specimens, pulls } = demoPulls(times, { ...shop, zone, profile }, digest);
  await tx.scale.create({ data: scale });
  await tx.pullSeries.create({ data: { ...series, plan: json(series.plan) } });
  await tx.pullMix.createMany({ data: mixes.map((mix) => ({ ...mix, sheet: json(mix.sheet) })) });
  await tx.pullSpecimen.createMany({ data: specimens });
  await tx.pull.createMany({ data: pulls });
  const personId = pulls[0]?.personId ?? null;
  await appendPullChange(tx, series.id, { kind: 'series-made', at: series.createdAt.getTime(), personId });
  await appendPullChange(tx, series.id, { kind: 'closed', at: series.closedAt.getTime(), personId });
}

/** Returns the batch's cups as its events leave them. */
async function insertBatch(tx: Tx, { events, ...batch }: DemoBatch): Promise<readonly MixState[]> {
  const route = await findRevisionRoute(tx, batch.revisionId);
  const openedAt = new Date(events[0]?.at ?? 0);
  if (route === null) throw new Error(`demo batch ${batch.number} names a revision that is not there`);
  const report = await judgeRevision(tx, batch.revisionId, openedAt.getTime());
  const taken =
    report === null
      ? {}
      : { findings: JSON.parse(JSON.stringify(takenFindings(report))), rulesVersion: report.rulesVersion };
  await tx.batch.create({ data: { ...batch, ...taken, status: 'open', lastSeq: events.length, openedAt } });
  const plan: BatchPlan = { ...route.plan, quantity: batch.quantity };
  const pieces = Array.from({ length: batch.quantity }, (_, index) => ({
    id: `${batch.id}-${index + 1}`,
    batchId: batch.id,
    number: index + 1,
  }));
  await tx.piece.createMany({ data: pieces });
  await tx.joint.createMany({
    data: pieces.flatMap((piece) => plan.anchors.map((anchor) => ({ pieceId: piece.id, anchorId: anchor.id }))),
  });
  await tx.batchEvent.createMany({
    data: events.map(({ seq, key, at, recordedAt, personId, body }) => ({
      batchId: batch.id,
      seq,
      key,
      at: new Date(at),
      recordedAt: new Date(recordedAt),
      personId,
      kind: body.kind,
      body: JSON.parse(JSON.stringify(body)),
    })),
  });
  const state = foldBatch(plan, events);
  await saveRows(tx, batch.id, foldBatch(plan, []), state);
  return state.mixes;
}
