import { compileProblem } from '@/lib/schedule/compiled-problem';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import { projectOf } from '@/lib/schedule/project';
import { longestChain } from '@/lib/schedule/project-search';
import { publishedInstances } from '../outside/schedule-data';

/** What is measured on a set: the gap to best known, or how far above the longest chain of activities a plan ends. */
interface PublishedSet {
  readonly name: string;
  readonly measure: 'gap' | 'above the chain';
  readonly schedules: readonly number[];
  /** Figures of others on the whole set at 1,000, 5,000 and 50,000 schedules. */
  readonly others: readonly (readonly [name: string, figures: string])[];
}

/**
 * Sources: Kolisch and Hartmann 2006, EJOR 174:23-37, and Debels and Vanhoucke 2007, all from memory; the prototype
 * was measured on whole sets, its third figure for j60 and j120 on a part of them.
 */
const SETS: readonly PublishedSet[] = [
  {
    name: 'j30',
    measure: 'gap',
    schedules: [1_000, 5_000, 50_000],
    others: [
      ['Kochetov and Stolyar', '0.10 0.04 0.00'],
      ['Debels and Vanhoucke 2007', '0.12 0.04 0.02'],
      ['Valls et al. hybrid GA', '0.27 0.06 0.02'],
      ['Alcaraz and Maroto', '0.25 0.06 0.03'],
      ['Hartmann 1998', '0.54 0.25 0.08'],
      ['prototype', '0.269 0.087 0.049'],
    ],
  },
  {
    name: 'j60',
    measure: 'above the chain',
    schedules: [1_000, 5_000, 50_000],
    others: [
      ['Debels and Vanhoucke 2007', '11.31 10.95 10.68'],
      ['Valls et al. hybrid GA', '11.56 11.10 10.73'],
      ['Kochetov and Stolyar', '11.71 11.17 10.74'],
      ['Hartmann 1998', '12.68 11.89 11.23'],
      ['prototype', '11.71 11.19 10.73'],
    ],
  },
  {
    name: 'j120',
    measure: 'above the chain',
    schedules: [1_000, 5_000, 50_000],
    others: [
      ['Debels and Vanhoucke 2007', '33.55 32.18 30.69'],
      ['Valls et al. hybrid GA', '34.07 32.54 31.24'],
      ['Kochetov and Stolyar', '34.74 33.36 32.06'],
      ['Hartmann 1998', '39.37 36.74 34.03'],
      ['prototype', '34.86 33.18 32.47'],
    ],
  },
];

/** Prints how good plans of the published projects are by schedules generated, beside what others reached. */
export function printPublishedGaps(): void {
  console.log('published projects, seed 1; ours on the given part of each set, the others on the whole of it, in %');
  for (const set of SETS) printSet(set);
}

function printSet({ name, measure, schedules, others }: PublishedSet): void {
  const instances = publishedInstances(name);
  if (instances.length === 0) {
    console.log(`skipped: data not here (${name})`);
    return;
  }
  const gaps = schedules.map(() => 0);
  const above = schedules.map(() => 0);
  let aboveOfBest = 0;
  const add = (sums: number[], i: number, value: number) => {
    sums[i] = (sums[i] ?? 0) + (100 * value) / instances.length;
  };
  for (const { problem, bestKnown } of instances) {
    const project = projectOf(compileProblem(problem));
    if (project === null || bestKnown === null) throw new RangeError(`${name} needs projects with a best known plan`);
    const chain = longestChain(project);
    aboveOfBest += (100 * (bestKnown / chain - 1)) / instances.length;
    const improver = new PlanImprover(problem, null, 1);
    for (const [i, count] of schedules.entries()) {
      // A plan that founds a population is three schedules, so that the last of them may go two beyond.
      improver.improve(count - improver.plansMade - 2);
      const { makespanMinute } = planValue(problem, improver.best());
      add(gaps, i, makespanMinute / bestKnown - 1);
      add(above, i, makespanMinute / chain - 1);
    }
  }
  const line = (figures: readonly number[], digits: number) => figures.map((value) => value.toFixed(digits)).join(' ');
  console.log(`${name}, ${instances.length} instances, at ${schedules.join(', ')} schedules`);
  console.log(`  ours: gap to best known ${line(gaps, 3)}`);
  console.log(`  ours: above the longest chain ${line(above, 2)} (best known: ${aboveOfBest.toFixed(2)})`);
  for (const [who, figures] of others) console.log(`  ${who}, ${measure}: ${figures}`);
}
