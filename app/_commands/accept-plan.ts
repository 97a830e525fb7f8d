import type { Timetable } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { type Db, isPostgresDb, writeTx } from '@/prisma/client';
import { findAcceptedPlanId, insertAcceptedPlan } from '@/prisma/data/plans';
import { getShop } from '@/prisma/data/shop';
import type { Refusal } from './command-result';

export type AcceptPlanResult = { readonly ok: true; readonly planId: string } | Refusal<'changed-meanwhile'>;

/**
 * Makes a plan the one that holds; the one before stays as it was, marked as replaced. Refused when somebody accepted
 * another since this one was made: what it says of what moved would be wrong.
 */
export function acceptPlan(
  database: Db,
  timetable: Timetable,
  madeAgainst: string | null,
  nowAt: Instant,
): Promise<AcceptPlanResult> {
  return writeTx(database, async (tx): Promise<AcceptPlanResult> => {
    if ((await findAcceptedPlanId(tx)) !== madeAgainst) {
      const message = 'Somebody else just accepted another plan. Plan anew and compare.';
      return { ok: false, code: 'changed-meanwhile', message };
    }
    const { timeZone } = await getShop(tx);
    const ends = timetable.visits.map(({ finishAt }) => finishAt);
    const fromOn = wallTimeAt(nowAt, timeZone).day;
    const toOn = wallTimeAt(Math.max(nowAt, ...ends), timeZone).day;
    const plan = { fromOn, toOn, timetable };
    return { ok: true, planId: await insertAcceptedPlan(tx, isPostgresDb(database), plan, nowAt) };
  });
}
