import 'server-only';
import type { Db } from '@/prisma/client';
import { type AcceptedPlan, findAcceptedPlan, findAcceptedPlanId } from '@/prisma/data/plans';

/** The plan that holds, by its id: a plan is never changed, and reading a long one takes its time. */
let kept: AcceptedPlan | null = null;

/** The plan that holds; null when none was accepted yet, or when it was written by a version that is not known. */
export async function acceptedPlan(database: Db): Promise<AcceptedPlan | null> {
  const id = await findAcceptedPlanId(database);
  if (id === null) return null;
  if (kept?.id !== id) kept = await findAcceptedPlan(database);
  return kept;
}
