import { type Timetable, timetableSchema } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';

/** A plan that was accepted. */
export interface AcceptedPlan {
  readonly id: string;
  readonly madeAt: Instant;
  readonly timetable: Timetable;
}

/** The plan that holds; null when none was accepted yet, or when it was written by a version that is not known. */
export async function findAcceptedPlan(reader: DbReader): Promise<AcceptedPlan | null> {
  const row = await reader.plan.findFirst({ where: { status: 'accepted' }, orderBy: { madeAt: 'desc' } });
  if (row === null) return null;
  const body = timetableSchema.safeParse(row.body);
  return body.success ? { id: row.id, madeAt: row.madeAt.getTime(), timetable: body.data } : null;
}

/** The plans that held before the one that does, newest first. */
export async function listReplacedPlans(reader: DbReader, count: number): Promise<AcceptedPlan[]> {
  const rows = await reader.plan.findMany({ where: { status: 'replaced' }, orderBy: { madeAt: 'desc' }, take: count });
  return rows.flatMap(({ id, madeAt, body }) => {
    const timetable = timetableSchema.safeParse(body);
    return timetable.success ? [{ id, madeAt: madeAt.getTime(), timetable: timetable.data }] : [];
  });
}

/** Puts a plan in the place of the one that holds. */
export async function insertAcceptedPlan(
  tx: Tx,
  plan: { readonly fromOn: string; readonly toOn: string; readonly timetable: Timetable },
  nowAt: Instant,
): Promise<string> {
  await tx.plan.updateMany({ where: { status: 'accepted' }, data: { status: 'replaced' } });
  const { fromOn, toOn, timetable } = plan;
  const body = JSON.parse(JSON.stringify(timetable));
  const { id } = await tx.plan.create({ data: { madeAt: new Date(nowAt), fromOn, toOn, status: 'accepted', body } });
  return id;
}
