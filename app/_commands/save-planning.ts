import type { BatchPlanningInput, RoutePlanningInput } from '@/lib/contracts/planning-forms';
import { type Db, writeTx } from '@/prisma/client';
import { saveOperationPlanning } from '@/prisma/data/operation-planning';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SavePlanningResult = Done | Refusal<'no-operation' | 'no-person' | 'no-resource' | 'no-batch'>;

/** Saves what the plan knows of a revision's operations, frozen or not: it changes nothing of what is made. */
export function saveRoutePlanning(
  database: Db,
  revisionId: string,
  { operations }: RoutePlanningInput,
): Promise<SavePlanningResult> {
  return writeTx(database, async (tx): Promise<SavePlanningResult> => {
    const there = await tx.routeOperation.findMany({ where: { revisionId }, select: { id: true } });
    const ids = new Set(there.map(({ id }) => id));
    if (operations.some((row) => !ids.has(row.operationId))) {
      const message = 'The route was changed meanwhile. Reload the page.';
      return { ok: false, code: 'no-operation', message };
    }
    const people = new Set((await tx.person.findMany({ select: { id: true } })).map(({ id }) => id));
    const resources = new Set((await tx.resource.findMany({ select: { id: true } })).map(({ id }) => id));
    for (const [index, { by, resourceId }] of operations.entries()) {
      if (by.personId !== null && !people.has(by.personId)) {
        const message = 'This person is not in the list any more.';
        return { ok: false, code: 'no-person', message, field: `operations.${index}.by` };
      }
      if (resourceId !== null && !resources.has(resourceId)) {
        const message = 'This is not in Shop, Places any more.';
        return { ok: false, code: 'no-resource', message, field: `operations.${index}.resourceId` };
      }
    }
    await saveOperationPlanning(
      tx,
      operations.map(({ by, ...row }) => ({ ...row, ...by })),
    );
    return DONE;
  });
}

/** Saves when an open batch may begin, when it is due, and its weight. */
export async function saveBatchPlanning(
  database: Db,
  batchId: string,
  { releaseOn, dueOn, weight }: BatchPlanningInput,
): Promise<SavePlanningResult> {
  const data = { releaseOn, dueOn, weight };
  const { count } = await writeTx(database, (tx) => tx.batch.updateMany({ where: { id: batchId }, data }));
  if (count > 0) return DONE;
  return { ok: false, code: 'no-batch', message: 'This batch is not there any more.' };
}

/** Saves what a person can do. */
export async function savePersonSkills(
  database: Db,
  personId: string,
  skills: readonly string[],
): Promise<SavePlanningResult> {
  const data = { skills: [...skills] };
  const { count } = await writeTx(database, (tx) => tx.person.updateMany({ where: { id: personId }, data }));
  if (count > 0) return DONE;
  return { ok: false, code: 'no-person', message: 'This person is not in the list any more. Go back to Shop.' };
}
