import { type MovedVisit, type Timetable, timetableSchema } from '@/lib/contracts/stored-plan';
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

/** The newest plans that held before the one that does, newest first. */
export async function listReplacedPlans(
  reader: DbReader,
  count: number,
): Promise<{ readonly id: string; readonly madeAt: Instant }[]> {
  const rows = await reader.plan.findMany({
    where: { status: 'replaced' },
    orderBy: { madeAt: 'desc' },
    take: count,
    select: { id: true, madeAt: true },
  });
  return rows.map(({ id, madeAt }) => ({ id, madeAt: madeAt.getTime() }));
}

/** What a plan moved against the one before it; null when it is not there or not known. */
export async function findPlanMoves(reader: DbReader, planId: string): Promise<readonly MovedVisit[] | null> {
  const row = await reader.plan.findUnique({ where: { id: planId }, select: { body: true } });
  const body = timetableSchema.safeParse(row?.body);
  return body.success ? body.data.moved : null;
}

/** Names the plan that holds; null: none was accepted yet. */
export async function findAcceptedPlanId(reader: DbReader): Promise<string | null> {
  const row = await reader.plan.findFirst({
    where: { status: 'accepted' },
    orderBy: { madeAt: 'desc' },
    select: { id: true },
  });
  return row?.id ?? null;
}

/** Puts a plan in the place of the one that holds. */
export async function insertAcceptedPlan(
  tx: Tx,
  isPostgres: boolean,
  plan: { readonly fromOn: string; readonly toOn: string; readonly timetable: Timetable },
  nowAt: Instant,
): Promise<string> {
  await tx.plan.updateMany({ where: { status: 'accepted' }, data: { status: 'replaced' } });
  const { fromOn, toOn, timetable } = plan;
  const row = { madeAt: new Date(nowAt), fromOn, toOn, status: 'accepted', body: {} };
  const { id } = await tx.plan.create({ data: row, select: { id: true } });
  // Half a megabyte goes in as it is: taken apart as a value it held the server up for a sixth of a second.
  const body = JSON.stringify(timetable);
  if (isPostgres) await tx.$executeRaw`UPDATE "Plan" SET "body" = ${body}::jsonb WHERE "id" = ${id}`;
  else await tx.$executeRaw`UPDATE "Plan" SET "body" = ${body} WHERE "id" = ${id}`;
  return id;
}
