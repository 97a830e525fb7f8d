import 'server-only';
import { PLAN_DAYS, type PlanInput, type PlanMaterial, type PlanStock } from '@/app/_plan/plan-input';
import { warmCures } from '@/app/_plan/shop-problem';
import { lanesOfCourse } from '@/lib/cure/cure-lanes';
import type { Instant } from '@/lib/units/instant';
import { addDays, wallTimeAt } from '@/lib/units/zoned-time';
import type { Db } from '@/prisma/client';
import { listBillNeeds, listStockedMaterials, takenByOpenBatches } from '@/prisma/data/batch-needs';
import { listOpenBatchHeads } from '@/prisma/data/batches';
import { listMixableMaterials } from '@/prisma/data/mix-materials';
import { listOperationPlanning } from '@/prisma/data/operation-planning';
import { listAllBenchExceptions, listPeopleWithSkills } from '@/prisma/data/people';
import { listPlanPins } from '@/prisma/data/plan-pins';
import { listResources } from '@/prisma/data/resources';
import type { ShopSettings } from '@/prisma/data/shop';
import { listStockOrders } from '@/prisma/data/stock-orders';
import { type CureCourse, currentCourse, supposedCourse } from './cure-course';
import { firstMixedAt, foldedBatches, knownBatch } from './known-batches';

/** Everything the plan is made of as it stands now. With `warmerC` the expected temperature is so much higher. */
export async function loadPlanInput(database: Db, shop: ShopSettings, nowAt: Instant, warmerC = 0): Promise<PlanInput> {
  const { timeZone: zone } = shop;
  const today = wallTimeAt(nowAt, zone).day;
  const heads = await listOpenBatchHeads(database);
  const revisionIds = [...new Set(heads.map((head) => head.revisionId))];
  const folded = await foldedBatches(database, heads);
  const firstAt = firstMixedAt(folded) ?? nowAt;
  const course =
    warmerC === 0
      ? await currentCourse(database, shop, firstAt, nowAt)
      : await supposedCourse(database, warmer(shop, warmerC), firstAt, nowAt);
  const [planning, mixable, people, exceptions, resources, pins, stock] = [
    await listOperationPlanning(database, revisionIds),
    await listMixableMaterials(database),
    await listPeopleWithSkills(database),
    await listAllBenchExceptions(database, addDays(today, -1), addDays(today, PLAN_DAYS)),
    await listResources(database),
    await listPlanPins(database),
    await loadPlanStock(database, revisionIds),
  ];
  const batches = heads.flatMap((head, index) => {
    const batch = folded[index];
    return batch === undefined ? [] : [{ head, known: knownBatch(head.id, batch, course) }];
  });
  const materials = new Map<string, PlanMaterial>(mixable.map(({ id, name, sheet }) => [id, { name, sheet }]));
  const lanesOf = lanesFor(course);
  const shared = { nowAt, zone, batches, planning, materials, people, exceptions, resources, pins };
  const input = { ...shared, stock, units: shop, lanesOf };
  await warmCures(input);
  return input;
}

async function loadPlanStock(database: Db, revisionIds: readonly string[]): Promise<PlanStock> {
  const bills = await listBillNeeds(database, revisionIds);
  const needed = bills.map(({ materialId }) => materialId);
  const materials = await listStockedMaterials(database, needed);
  const orders = await listStockOrders(database, needed);
  return { bills, taken: await takenByOpenBatches(database), materials, orders };
}

const lanes = new WeakMap<CureCourse, PlanInput['lanesOf']>();

/** The lanes of a course, summed once for as long as the course is kept. */
function lanesFor(course: CureCourse): PlanInput['lanesOf'] {
  const kept = lanes.get(course) ?? lanesOfCourse(course.course);
  lanes.set(course, kept);
  return kept;
}

function warmer(shop: ShopSettings, byC: number): ShopSettings {
  const { otherwiseC, periods } = shop.temperatureProfile;
  const temperatureProfile = {
    otherwiseC: otherwiseC + byC,
    periods: periods.map((period) => ({ ...period, temperatureC: period.temperatureC + byC })),
  };
  return { ...shop, temperatureProfile };
}
