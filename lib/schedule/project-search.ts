import { OrderBreeding, type Parent } from '@/lib/schedule/order-breeding';
import { type Project, reversedProject } from '@/lib/schedule/project';
import { SerialGenerator, sortedBy, topologicalOrder } from '@/lib/schedule/serial-generator';
import { workBound } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Schedules of one direction bred together. Chosen, as what follows, on the given instances over several seeds. */
const POPULATION = 40;
/** Breedings without a better plan, for each schedule of a population, after which a new population begins. */
const MOST_STAGNANT = 60;
/** So many schedules the search is keen: half of the parents are then the better of two, later they are just anyone. */
const KEEN_SCHEDULES = 1_000;
/** What a later start adds to a plan's cost, so that of two that end together the more compact one counts as better. */
const START_PRICE = 1e-4;

interface Individual extends Parent {
  readonly cost: number;
}

/**
 * A project without greatest lags, to be over as soon as may be. Two populations are bred: of schedules generated
 * from the beginning, and of those generated from the end backwards. Children of the one, put in the order in which
 * their parents end, are generated in the other direction, so that each breeding also justifies, at one schedule a
 * child. The same seed and number of schedules give the same plan; the best so far always holds.
 *
 * Source: bi-population genetic search, Debels and Vanhoucke 2005 (from memory); random moves in the orders are ours.
 */
export class ProjectSearch {
  schedules = 0;
  /** No plan is over earlier: the longest chain, or the work of the busiest resource. */
  readonly lowerBound: number;
  /** Starts of the best plan; null while none is made. */
  best: Int32Array | null = null;
  bestEnd = Number.MAX_SAFE_INTEGER;
  readonly #project: Project;
  readonly #forward: Direction;
  readonly #backward: Direction;
  readonly #tail: Float64Array;
  readonly #random: () => number;
  readonly #breeding: OrderBreeding;
  /** The direction that the next children are generated in, and how many of it have been made in a row. */
  #next: Direction;
  #made = 0;
  #stagnant = 0;
  #isFirst = true;

  constructor(project: Project, seed: number) {
    this.#project = project;
    this.#random = seededRandom(seed);
    this.#breeding = new OrderBreeding(project, this.#random);
    const length = longestLength(project);
    const route = topologicalOrder(project);
    this.#forward = directionOf(project, length, route);
    // Lags that overlap their activities may turn round when time does: then both directions go forward.
    this.#backward = project.hasGeneralLags
      ? directionOf(project, length, route)
      : directionOf(reversedProject(project), length, route.slice().reverse());
    this.#next = this.#backward;
    this.#tail = tails(project, route);
    this.lowerBound = Math.max(workBound(project), ...this.#tail);
  }

  /** Proved best: it ends at the lower bound. */
  get isDone(): boolean {
    return this.bestEnd <= this.lowerBound;
  }

  /** Generates at least so many more schedules (up to two more), fewer when the best is proved. */
  step(schedules: number): void {
    const until = this.schedules + schedules;
    while (this.schedules < until && !this.isDone) {
      if (this.#forward.population.length < POPULATION) this.#found();
      else this.#breed();
    }
  }

  /** One more for both populations: a sampled order, justified backwards and forwards. */
  #found(): void {
    const first = this.#generate(this.#forward, this.#sampledOrder());
    const back = this.#generate(this.#backward, sortedBy(first.starts, this.#backward.route));
    this.#backward.population.push(back);
    this.#forward.population.push(this.#generate(this.#forward, sortedBy(back.starts, this.#forward.route)));
  }

  #breed(): void {
    const to = this.#next;
    const parents = to === this.#forward ? this.#backward.population : this.#forward.population;
    const order = sortedBy(this.#breeding.cross(this.#parent(parents), this.#parent(parents)), to.route);
    this.#breeding.shake(to.project, order);
    const before = this.bestEnd;
    this.#enter(to.population, this.#generate(to, order));
    this.#made++;
    if (this.#made === POPULATION) {
      this.#made = 0;
      this.#next = to === this.#forward ? this.#backward : this.#forward;
    }
    this.#stagnant = this.bestEnd < before ? 0 : this.#stagnant + 1;
    if (this.#stagnant < MOST_STAGNANT * POPULATION) return;
    this.#stagnant = 0;
    this.#made = 0;
    this.#next = this.#backward;
    this.#forward.population = [];
    this.#backward.population = [];
  }

  /** Takes the place of the worst, unless it is worse still or there already. */
  #enter(population: Individual[], made: Individual): void {
    let worst = 0;
    for (const [i, other] of population.entries()) {
      if (other.cost === made.cost && isSame(other.starts, made.starts)) return;
      if (other.cost > (population[worst]?.cost ?? 0)) worst = i;
    }
    if (made.cost <= (population[worst]?.cost ?? 0)) population[worst] = made;
  }

  /** One schedule generated; its starts are given as the other direction, for which it is a parent, counts them. */
  #generate(direction: Direction, order: Int32Array): Individual {
    const { duration, count, hasGeneralLags } = this.#project;
    const end = direction.generator.generate(order);
    this.schedules++;
    const made = direction.generator.start;
    let sum = 0;
    for (const start of made) sum += start;
    const mirrored = made.map((start, j) => end - start - (duration[j] ?? 0));
    if (end < this.bestEnd) {
      this.bestEnd = end;
      this.best = direction === this.#forward || hasGeneralLags ? made.slice() : mirrored;
    }
    return { starts: hasGeneralLags ? made.slice() : mirrored, end, cost: end + (sum / count) * START_PRICE };
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

  #parent(population: readonly Individual[]): Individual {
    const one = this.#anyone(population);
    if (this.schedules >= KEEN_SCHEDULES || this.#random() < 0.5) return one;
    const other = this.#anyone(population);
    return other.cost < one.cost ? other : one;
  }

  #anyone(population: readonly Individual[]): Individual {
    const one = population[Math.floor(this.#random() * population.length)];
    if (one === undefined) throw new RangeError('anyone needs a population');
    return one;
  }
}

/** Generating forwards, or backwards as the project with time running backwards. */
interface Direction {
  readonly project: Project;
  readonly generator: SerialGenerator;
  readonly route: Int32Array;
  population: Individual[];
}

function directionOf(project: Project, length: number, route: Int32Array): Direction {
  return { project, generator: new SerialGenerator(project, length), route, population: [] };
}

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
