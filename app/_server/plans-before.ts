import 'server-only';
import type { MovedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { findPlanMoves, listReplacedPlans } from '@/prisma/data/plans';

/** A plan that held before, and what it moved. */
export interface PlanBefore {
  readonly id: string;
  readonly madeAt: Instant;
  readonly moved: readonly MovedVisit[];
}

/** Plans of before that are told. Chosen: some weeks of evenings. */
const MOST_TOLD = 6;

/** What plans moved, by their id: a plan is never changed. */
const known = new Map<string, readonly MovedVisit[]>();

/** The plans that held before, newest first; those of a version that is not known are left out. */
export async function listPlansBefore(database: Db): Promise<PlanBefore[]> {
  const before = await listReplacedPlans(database, MOST_TOLD);
  const told: PlanBefore[] = [];
  for (const { id, madeAt } of before) {
    const moved = known.get(id) ?? (await findPlanMoves(database, id));
    if (moved === null) continue;
    known.set(id, moved);
    told.push({ id, madeAt, moved });
  }
  const ids = new Set(before.map(({ id }) => id));
  for (const id of known.keys()) if (!ids.has(id)) known.delete(id);
  return told;
}
