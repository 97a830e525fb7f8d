import { expect, it } from 'vitest';
import { startSolver } from '@/app/_plan/constraint-solver';
import { constraintAnswerSchema } from '@/lib/contracts/solver-message';
import { checkPlan } from '@/lib/schedule/check-plan';
import { type ConstraintAnswer, planOfAnswer } from '@/lib/schedule/constraint-answer';
import { constraintModel } from '@/lib/schedule/constraint-model';
import { firstPlan } from '@/lib/schedule/first-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { randomShop } from '../lib/schedule/random-shop';
import { leastAndMostLate, tinyShop } from '../lib/schedule/tiny-shop';

const SOAK = process.env.SOAK === '1';
const TINY_SHOPS = SOAK ? 60 : 3;
const RANDOM_SHOPS = SOAK ? 60 : 3;
/** Generous: the models are solved in milliseconds, whatever else the computer does. */
const WITHIN_MS = 60_000;

async function solved(problem: PlanningProblem, before: ShopPlan) {
  const made = constraintModel(problem, before, null);
  if (!made.ok) return made.refusal;
  const { model } = made;
  const answers: ConstraintAnswer[] = [];
  const tell = (printed: string) => answers.push(constraintAnswerSchema.parse(JSON.parse(printed)));
  const { kind } = await startSolver({ text: model.text, withinMs: WITHIN_MS, tell }).end;
  const answer = answers.at(-1) ?? null;
  return { kind, model, answer, plan: answer === null ? null : planOfAnswer(problem, before, model, answer) };
}

const late = (problem: PlanningProblem, plan: ShopPlan) => planValue(problem, plan).weightedLateMinutes;

it('finds and proves what looking at every plan of a tiny shop finds', { timeout: 600_000 }, async () => {
  let tried = 0;
  for (let seed = 1; tried < TINY_SHOPS; seed++) {
    const problem = tinyShop(seed);
    const all = leastAndMostLate(problem);
    if (all === null || late(problem, all.least) === late(problem, all.most)) continue;
    tried++;
    const least = late(problem, all.least);
    const found = await solved(problem, all.most);
    if (found.kind !== 'proved') throw new Error(`seed ${seed}: ${found.kind}`);
    const { model, answer, plan } = found;
    expect(model.limits).toEqual([]);
    expect((answer?.late[0] ?? -1) / model.weightScale, `seed ${seed}`).toBe(least);
    expect(plan === null ? null : checkPlan(problem, plan), `seed ${seed}`).toEqual([]);
    expect(plan === null ? null : late(problem, plan), `seed ${seed}`).toBe(least);
    if (!SOAK && tried > 1) continue;
    // From the best plan on there is nothing to be found.
    const again = await solved(problem, all.least);
    if (least === 0) expect(again.kind).toBe('nothing-late');
    else if (again.kind === 'proved') expect(again.answer, `seed ${seed}`).toBe(null);
    else expect(again.kind).toBe('none-better');
  }
});

it('of odd shops its plans hold, and where it proves one best our search finds none better', {
  timeout: 600_000,
}, async () => {
  let tried = 0;
  for (let seed = 1; tried < RANDOM_SHOPS; seed++) {
    const problem = randomShop(seed);
    const first = firstPlan(problem);
    if (first.unplaced.length > 0) continue;
    const found = await solved(problem, first);
    if (!('model' in found)) continue;
    tried++;
    expect(found.kind, `seed ${seed}`).not.toBe('failed');
    const best = found.plan ?? first;
    expect(
      found.plan === null ? [] : checkPlan(problem, found.plan).filter(({ kind }) => kind !== 'least-lag'),
    ).toEqual(found.plan === null ? [] : checkPlan(problem, first).filter(({ kind }) => kind !== 'least-lag'));
    if (found.kind !== 'proved' || found.model.limits.length > 0) continue;
    const improver = new PlanImprover(problem, null, 1);
    improver.improve(2_000);
    expect(late(problem, improver.best()), `seed ${seed}`).toBeGreaterThanOrEqual(late(problem, best));
  }
});
