import { expect, it } from 'vitest';
import { shopProblem } from '@/app/_plan/shop-problem';
import { timetableOf } from '@/app/_plan/timetable';
import { loadPlanInput } from '@/app/_server/plan-input';
import { checkPlan } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { getShop } from '@/prisma/data/shop';
import { loadDemo } from '@/prisma/seed/load-demo';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);

describeBothDatabases('the plan of the demo workshop', (makeDb) => {
  it('is a sound problem, and its first plan holds', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const shop = await getShop(db);
    const input = await loadPlanInput(db, shop, NOW);
    const t0 = performance.now();
    const made = shopProblem(input);
    const t1 = performance.now();
    expect(problemFaults(made.problem)).toEqual([]);
    const t2 = performance.now();
    const plan = firstPlan(made.problem);
    const t3 = performance.now();
    console.log('map', t1 - t0, 'plan', t3 - t2, made.problem.tasks.length, made.problem.lagTables.length);
    expect(checkPlan(made.problem, plan)).toEqual([]);
    const timetable = timetableOf(made, plan, { unavoidableLateMinutes: null, isProvedBest: false }, []);
    console.log(made.notes, timetable.unplaced, timetable.batches, timetable.value);
    for (const v of timetable.visits.slice(0, 40))
      console.log(
        new Date(v.startAt).toISOString(),
        v.batchNumber,
        v.operationName,
        v.pieces.length,
        v.personId,
        v.state,
      );
  });
});
