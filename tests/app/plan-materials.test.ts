import { expect, it } from 'vitest';
import { addBenchException } from '@/app/_commands/add-bench-exception';
import { addStockOrder } from '@/app/_commands/add-stock-order';
import { openBatch } from '@/app/_commands/open-batch';
import { pinVisit } from '@/app/_commands/pin-visit';
import { removeStockOrder } from '@/app/_commands/remove-stock-order';
import { shopProblem } from '@/app/_plan/shop-problem';
import { checkPin } from '@/app/_server/pin-check';
import { loadPlanInput } from '@/app/_server/plan-input';
import { findPlanRun, startPlanRun, timetableOfRun } from '@/app/_server/plan-runs';
import { shopDayFormSchema } from '@/lib/contracts/bench-hours';
import { stockOrderFormSchema } from '@/lib/contracts/stock-forms';
import type { Timetable } from '@/lib/contracts/stored-plan';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';
import { listStockOrders } from '@/prisma/data/stock-orders';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestRevision, insertTestWorkshop } from './test-workshop';

const DAY_MS = 24 * HOUR_MS;

/** Ada every evening from 18 to 22 o'clock UTC; each piece of the two batches takes 60 g of glue, and 500 g are there. */
async function twoBatches(db: Db, paintMinutes = 2, revisionId = 'rev'): Promise<void> {
  await insertTestWorkshop(db);
  if (revisionId !== 'rev') await insertTestRevision(db, revisionId, new Date(EVENING));
  await db.routeOperation.updateMany({ where: { name: 'paint' }, data: { attendedMinutes: paintMinutes } });
  await db.benchHours.createMany({
    data: [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ personId: 'ada', weekday, fromMinute: 1080, toMinute: 1320 })),
  });
  await db.billLine.create({
    data: { revisionId, position: 0, materialId: 'glue', quantity: 60, quantityUnit: 'g', note: '' },
  });
  const shared = { revisionId, quantity: 6, orderNote: '', personId: null, now: EVENING };
  await openBatch(db, { ...shared, batchId: `${revisionId}-late`, dueOn: '2026-04-20' });
  await openBatch(db, { ...shared, batchId: `${revisionId}-soon`, dueOn: '2026-04-10' });
}

async function order(db: Db, milli: number, expectedOn: string): Promise<void> {
  expect(await addStockOrder(db, 'glue', 'g', { milli, expectedOn, note: '' }, EVENING)).toEqual({ ok: true });
}

async function problemOf(db: Db) {
  return shopProblem(await loadPlanInput(db, await getShop(db), EVENING));
}

async function madePlan(db: Db, nowAt: Instant): Promise<Timetable> {
  const run = await startPlanRun(db, null, nowAt, { seed: 1, plans: 60, withinMs: 60_000 });
  await expect.poll(() => findPlanRun(run.id)?.status, { timeout: 30_000 }).toBe('done');
  const found = findPlanRun(run.id);
  const timetable = found === null ? null : timetableOfRun(found);
  if (timetable === null) throw new Error('no plan was made');
  return timetable;
}

describeBothDatabases('materials in the plan', (makeDb) => {
  it('what is short and ordered begins after it has come; the batch due first is served first', async () => {
    const db = await makeDb();
    await twoBatches(db);
    await order(db, 300_000, '2026-03-20');
    const { problem, about, notes } = await problemOf(db);
    expect(notes).toEqual([]);
    const released = problem.tasks.filter(({ releaseMinute }) => releaseMinute > 0);
    // 720 g are needed and 500 g there: the six pieces due first have theirs, of the others 140 of 360 g are there.
    expect(released.map(({ id }) => about.get(id)?.operationName)).toEqual(['glue']);
    expect(released[0]?.batchId).toBe('rev-late');
    const releasedAt = problem.epochAt + (released[0]?.releaseMinute ?? 0) * 60_000;
    expect(new Date(releasedAt).toISOString()).toBe('2026-03-21T00:00:00.000Z');
    const timetable = await madePlan(db, EVENING);
    const glue = timetable.visits.find(
      ({ batchId, operationName }) => batchId === 'rev-late' && operationName === 'glue',
    );
    expect(glue?.waitsFor).toBe('220.0 g of Test glue is expected on Fri 20 Mar 2026');
    expect(glue?.startAt).toBe(Date.UTC(2026, 2, 21, 18));
    const first = timetable.visits.find(
      ({ batchId, operationName }) => batchId === 'rev-soon' && operationName === 'glue',
    );
    expect(first?.waitsFor).toBeNull();
    expect(first?.startAt).toBeLessThan(EVENING + DAY_MS);
  });

  it('what is short with nothing ordered is said, and an order that has not come counts as none', async () => {
    const db = await makeDb();
    await twoBatches(db);
    const texts = async () => (await problemOf(db)).notes.map(({ text }) => text);
    const shared = 'Not enough Test glue for batch 1, glue: 220.0 g of 360.0 g missing';
    const end = 'The plan goes on as if it were there.';
    expect(await texts()).toEqual([`${shared}, and nothing is ordered. ${end}`]);
    await order(db, 300_000, '2026-03-09');
    expect(await texts()).toEqual([`${shared}, and what was expected on Mon 9 Mar 2026 has not come. ${end}`]);
    const [late] = await listStockOrders(db, ['glue']);
    await removeStockOrder(db, late?.id ?? '');
    await order(db, 100_000, '2026-03-12');
    expect(await texts()).toEqual([
      `Not enough Test glue for batch 1, glue: 120.0 g of 360.0 g missing, and what is ordered does not make up for it. ${end}`,
    ]);
  });

  it('a pin before the material is there is told so, and by when it would have to come', async () => {
    const db = await makeDb();
    await twoBatches(db);
    await order(db, 300_000, '2026-03-20');
    const { problem, about } = await problemOf(db);
    const glue = problem.tasks.find(({ releaseMinute }) => releaseMinute > 0);
    const own = about.get(glue?.id ?? '');
    if (own === undefined) throw new Error('nothing waits');
    const { batchId, taskKey } = own;
    const pin = { batchId, taskKey, startAt: EVENING + 2 * DAY_MS, personId: null };
    const checked = await checkPin(db, await getShop(db), pin, EVENING);
    expect(checked.clashes).toContain(
      'Batch 1, glue, pieces 1-6 begins before its material is there: 220.0 g of Test glue is expected on Fri 20 Mar 2026.',
    );
    await pinVisit(db, pin, EVENING);
    const timetable = await madePlan(db, EVENING);
    expect(timetable.pinClashes.map(({ label }) => label)).toEqual(['Batch 1, glue, pieces 1-6']);
    expect(timetable.pinClashes[0]?.reason).toMatch(/^Cannot be kept where it is pinned: .*220\.0 g of Test glue/);
    expect(timetable.pinClashes[0]?.lifts.join(' ')).toMatch(
      /^Having its material by Thu 12 Mar 2026 18:00 would do\. Pinning it at Sat 21 Mar 2026 18:00 would do\./,
    );
  });

  it('a step longer than every session is answered with the reason and the least that lifts it', async () => {
    const db = await makeDb();
    // A revision of its own: routes of open batches are kept by their revision in this process.
    await twoBatches(db, 50, 'slow');
    await db.operationPlanning.create({
      data: { operationId: 'slow-paint', resourceShare: 'visit', holdsUntil: 'attended', setUpMinutes: 0 },
    });
    const timetable = await madePlan(db, EVENING);
    const [first] = timetable.unplaced.filter(({ waitsForKey }) => waitsForKey === null);
    expect(first?.label).toMatch(/, paint, pieces 1-6$/);
    expect(first?.reason).toBe(
      'Cannot be planned: it takes 5 h 00 in one go, and the longest session is 4 h 00 (Tue 10 Mar 2026).',
    );
    expect(first?.lifts[0]).toMatch(/^A session 1 h 00 longer \(Ada, .*\) would do\.$/);
    expect(first?.lifts).toContain('No more than 4 pieces in a visit would do.');
    expect(timetable.unplaced.filter(({ waitsForKey }) => waitsForKey !== null).length).toBeGreaterThan(0);
  });

  it('a day of the whole shop takes hours away and gives none, unless it says so', async () => {
    const db = await makeDb();
    await twoBatches(db);
    await db.person.create({ data: { id: 'cleo', name: 'Cleo', skills: [], createdAt: new Date(EVENING) } });
    const shop = { onDate: '2026-03-14', reason: '' };
    const spans = async (personId: string) => {
      const { problem } = await problemOf(db);
      const from = (Date.UTC(2026, 2, 14) - problem.epochAt) / 60_000;
      const sessions = problem.people.find(({ id }) => id === personId)?.sessions ?? [];
      return sessions
        .filter(({ startMinute }) => startMinute >= from && startMinute < from + 1440)
        .map(({ startMinute, endMinute }) => [startMinute - from, endMinute - from]);
    };
    const read = (more: object) => shopDayFormSchema.parse({ ...shop, ...more });
    await addBenchException(db, null, read({ kind: 'within', from: '10:00', to: '20:00' }));
    expect(await spans('ada')).toEqual([[1080, 1200]]);
    expect(await spans('cleo')).toEqual([]);
    await addBenchException(db, null, read({ kind: 'beside', from: '8:00', to: '9:00' }));
    expect(await spans('ada')).toEqual([
      [480, 540],
      [1080, 1200],
    ]);
    expect(await spans('cleo')).toEqual([[480, 540]]);
    await addBenchException(db, 'cleo', { ...shop, from: null, to: null });
    expect(await spans('cleo')).toEqual([]);
  });
});

it('forms of orders and of days of the shop refuse what does not fit', () => {
  const units = { lengthUnit: 'mm', temperatureUnit: 'C', massUnit: 'g', forceUnit: 'N' } as const;
  const schema = stockOrderFormSchema('g', units);
  expect(schema.parse({ milli: '1.5 kg', expectedOn: '2026-03-20', note: '' }).milli).toBe(1_500_000);
  expect(schema.safeParse({ milli: '0', expectedOn: '2026-03-20', note: '' }).success).toBe(false);
  expect(schema.safeParse({ milli: '5', expectedOn: '2026-02-30', note: '' }).success).toBe(false);
  const day = { onDate: '2026-03-14', reason: '' };
  expect(shopDayFormSchema.safeParse({ ...day, kind: 'shut', from: '', to: '' }).success).toBe(true);
  expect(shopDayFormSchema.safeParse({ ...day, kind: 'shut', from: '8:00', to: '9:00' }).success).toBe(false);
  expect(shopDayFormSchema.safeParse({ ...day, kind: 'within', from: '', to: '' }).success).toBe(false);
  expect(shopDayFormSchema.safeParse({ ...day, kind: 'beside', from: '8:00', to: '' }).success).toBe(false);
});
