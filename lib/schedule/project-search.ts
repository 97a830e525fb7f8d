import { OrderBreeding } from '@/lib/schedule/order-breeding';
import { type Project, reversedProject } from '@/lib/schedule/project';
import { SerialGenerator, sortedBy, topologicalOrder } from '@/lib/schedule/serial-generator';
import { workBound } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Orders bred together. Chosen on generated projects of 30 and the given ones of 120 activities. */
const POPULATION = 50;
/** Breedings without a better plan after which a new population begins. */
const MOST_STAGNANT = 400;
/** What a later start adds to a plan's cost, so that of two that end together the more compact one counts as better. */
const START_PRICE = 1e-6;

interface Individual {
  /** In order of the starts. */
  readonly order: Int32Array;
  readonly starts: Int32Array;
  readonly end: number;
  readonly cost: number;
}

/**
 * A project without greatest lags, to be over as soon as may be: orders of the activities are bred, each is decoded by
 * serial generation and justified to the right and back to the left (three schedules generated). The same seed and
 * number of schedules give the same plan; the best so far always holds.
 *
 * Source: activity lists and double justification as surveyed by Kolisch and Hartmann 2006 (from memory).
 */
export class ProjectSearch {
  schedules = 0;
  /** No plan is over earlier: the longest chain, or the work of the busiest resource. */
  readonly lowerBound: number;
  #best: Individual | null = null;
  #population: Individual[] = [];
  #stagnant = 0;
  #isFirst = true;
  readonly #project: Project;
  readonly #forward: SerialGenerator;
  readonly #backward: SerialGenerator;
  readonly #route: Int32Array;
  readonly #reverseRoute: Int32Array;
  readonly #tail: Float64Array;
  readonly #random: () => number;
  readonly #breeding: OrderBreeding;

  constructor(project: Project, seed: number) {
    this.#project = project;
    this.#random = seededRandom(seed);
    this.#breeding = new OrderBreeding(project, this.#random);
    const length = longestLength(project);
    this.#forward = new SerialGenerator(project, length);
    this.#backward = new SerialGenerator(reversedProject(project), length);
    this.#route = topologicalOrder(project);
    this.#reverseRoute = this.#route.slice().reverse();
    this.#tail = tails(project, this.#route);
    this.lowerBound = Math.max(workBound(project), ...this.#tail);
  }

  get best(): Int32Array | null {
    return this.#best?.starts ?? null;
  }

  get bestEnd(): number {
    return this.#best?.end ?? Number.MAX_SAFE_INTEGER;
  }

  /** Proved best: it ends at the lower bound. */
  get isDone(): boolean {
    return this.bestEnd <= this.lowerBound;
  }

  /** Generates at least so many more schedules (up to two more), fewer when the best is proved. */
  step(schedules: number): void {
    const until = this.schedules + schedules;
    while (this.schedules < until && !this.isDone) {
      if (this.#population.length < POPULATION) this.#population.push(this.#evaluate(this.#sampledOrder()));
      else this.#breed();
    }
  }

  #breed(): void {
    const before = this.bestEnd;
    const mother = this.#better(this.#anyone(), this.#anyone());
    const father = this.#better(this.#anyone(), this.#anyone());
    const child =
      this.#random() < 0.5
        ? this.#breeding.keepPeaks(mother.order, mother.starts, mother.end, father.order)
        : this.#breeding.twoPoint(mother.order, father.order);
    this.#breeding.shake(child, SHAKE_SWAPS / child.length);
    this.#enter(this.#evaluate(child));
    this.#stagnant = this.bestEnd < before ? 0 : this.#stagnant + 1;
    if (this.#stagnant < MOST_STAGNANT) return;
    this.#stagnant = 0;
    this.#population = [];
  }

  /** Takes the place of the worst, unless it is worse still or there already. */
  #enter(made: Individual): void {
    let worst = 0;
    for (const [i, other] of this.#population.entries()) {
      if (other.cost === made.cost && isSame(other.starts, made.starts)) return;
      if (other.cost > (this.#population[worst]?.cost ?? 0)) worst = i;
    }
    if (made.cost <= (this.#population[worst]?.cost ?? 0)) this.#population[worst] = made;
  }

  /** Decodes an order, pushes all to the right of its end, and back to the left. */
  #evaluate(order: Int32Array): Individual {
    const { duration, count } = this.#project;
    const firstEnd = this.#forward.generate(order);
    this.schedules++;
    const starts = this.#forward.start;
    if (firstEnd < this.bestEnd) this.#best = { order, starts: starts.slice(), end: firstEnd, cost: firstEnd };
    if (this.#project.hasGeneralLags) return this.#individual(firstEnd);
    const key = new Int32Array(count);
    for (let j = 0; j < count; j++) key[j] = firstEnd - (starts[j] ?? 0) - (duration[j] ?? 0);
    const backEnd = this.#backward.generate(sortedBy(key, this.#reverseRoute));
    this.schedules++;
    for (let j = 0; j < count; j++) key[j] = backEnd - (this.#backward.start[j] ?? 0) - (duration[j] ?? 0);
    const end = this.#forward.generate(sortedBy(key, this.#route));
    this.schedules++;
    return this.#individual(end);
  }

  #individual(end: number): Individual {
    const starts = this.#forward.start.slice();
    let sum = 0;
    for (const start of starts) sum += start;
    const made = { order: sortedBy(starts, this.#route), starts, end, cost: end + sum * START_PRICE };
    if (end < this.bestEnd) this.#best = made;
    return made;
  }

  /** An order at random, in which what has a longer way to the end tends to come first; the first goes by it alone. */
  #sampledOrder(): Int32Array {
    const { count, into, outOf } = this.#project;
    const waits = new Int32Array(count);
    const ready: number[] = [];
    for (let j = 0; j < count; j++) {
      waits[j] = (into.first[j + 1] ?? 0) - (into.first[j] ?? 0);
      if (waits[j] === 0) ready.push(j);
    }
    const order = new Int32Array(count);
    for (let i = 0; i < count; i++) {
      const pick = this.#isFirst ? this.#longest(ready) : this.#drawn(ready);
      const j = ready[pick] ?? 0;
      ready[pick] = ready[ready.length - 1] ?? 0;
      ready.pop();
      order[i] = j;
      for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
        const to = outOf.other[k] ?? 0;
        waits[to] = (waits[to] ?? 0) - 1;
        if (waits[to] === 0) ready.push(to);
      }
    }
    this.#isFirst = false;
    return order;
  }

  #longest(ready: readonly number[]): number {
    let pick = 0;
    for (const [r, j] of ready.entries()) if ((this.#tail[j] ?? 0) > (this.#tail[ready[pick] ?? 0] ?? 0)) pick = r;
    return pick;
  }

  #drawn(ready: readonly number[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const j of ready) least = Math.min(least, this.#tail[j] ?? 0);
    let sum = 0;
    for (const j of ready) sum += (this.#tail[j] ?? 0) - least + 1;
    let dice = this.#random() * sum;
    for (const [r, j] of ready.entries()) {
      dice -= (this.#tail[j] ?? 0) - least + 1;
      if (dice <= 0) return r;
    }
    return ready.length - 1;
  }

  #anyone(): Individual {
    const one = this.#population[Math.floor(this.#random() * this.#population.length)];
    if (one === undefined) throw new RangeError('anyone needs a population');
    return one;
  }

  #better(a: Individual, b: Individual): Individual {
    return b.cost < a.cost ? b : a;
  }
}

/** Neighbours swapped in an order on average. */
const SHAKE_SWAPS = 1.5;

/** No left-justified schedule is longer: all activities one after the other, with the longest lag after each. */
function longestLength({ count, duration, outOf }: Project): number {
  let length = 1;
  for (let j = 0; j < count; j++) {
    let longest = duration[j] ?? 0;
    for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
      longest = Math.max(longest, (outOf.lag[k] ?? 0) + (duration[outOf.other[k] ?? 0] ?? 0));
    }
    length += longest;
  }
  return length;
}

/** From each start to the end of everything, at the least. */
function tails({ count, duration, outOf }: Project, route: Int32Array): Float64Array {
  const tail = new Float64Array(count);
  for (let i = count - 1; i >= 0; i--) {
    const j = route[i] ?? 0;
    let longest = duration[j] ?? 0;
    for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
      longest = Math.max(longest, (outOf.lag[k] ?? 0) + (tail[outOf.other[k] ?? 0] ?? 0));
    }
    tail[j] = longest;
  }
  return tail;
}

function isSame(a: Int32Array, b: Int32Array): boolean {
  return a.every((value, i) => value === b[i]);
}
