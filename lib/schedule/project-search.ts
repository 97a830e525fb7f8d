import { OrderBreeding, type Parent, smallness } from '@/lib/schedule/order-breeding';
import { OrderSampling } from '@/lib/schedule/order-sampling';
import { type Project, reversedProject } from '@/lib/schedule/project';
import { SerialGenerator, sortedBy, topologicalOrder } from '@/lib/schedule/serial-generator';
import { workBound } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/**
 * Schedules of one direction bred together: this many, and one more for so many activities. Chosen, as what follows,
 * on given and invented instances over several seeds.
 */
const LEAST_POPULATION = 26;
const ACTIVITIES_PER_PARENT = 9;
/** Breedings without a better plan, for each activity, after which a breed is spent. */
const MOST_STAGNANT = 20;
/** So many schedules the search of a small project is keen: every other parent is the better of two. Chosen likewise. */
const KEEN_SCHEDULES = 1_000;
const KEEN_CHANCE = 0.5;
/** What a later start adds to a plan's cost, so that of two that end together the more compact one counts as better. */
const START_PRICE = 1e-4;

interface Individual extends Parent {
  readonly cost: number;
}

/**
 * A project without greatest lags, to be over as soon as may be. Two populations are bred: of schedules generated
 * from the beginning, and of those generated from the end backwards. Children of the one, put in the order in which
 * their parents end, are generated in the other direction, so that each breeding also justifies, at one schedule a
 * child. When nothing better comes any more, the breed rests and a new one begins; two breeds that have come equally
 * far are joined, the better half of each, and bred on. So what many schedules find grows from several that few found,
 * however many are asked for. The same seed and number of schedules give the same plan; the best so far always holds.
 *
 * Source: bi-population genetic search, Debels and Vanhoucke 2005 (from memory); moves in the orders and the joining
 * of breeds are ours.
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
  readonly #random: () => number;
  readonly #sampling: OrderSampling;
  readonly #breeding: OrderBreeding;
  readonly #population: number;
  readonly #keenChance: number;
  /** Children made in one direction before it is the turn of the other: a population of them, few in a small project. */
  readonly #turn: number;
  /** The direction that the next children are generated in, and how many of it have been made in a row. */
  #next: Direction;
  #made = 0;
  /** Breeds at rest, each of more joinings than the one after it. */
  readonly #resting: Breed[] = [];
  /** Of the present breed: how often its forebears were joined, when its best is over, and for how long it stands still. */
  #joinings = 0;
  #breedEnd = Number.MAX_SAFE_INTEGER;
  #stagnant = 0;

  constructor(project: Project, seed: number) {
    this.#project = project;
    this.#random = seededRandom(seed);
    this.#breeding = new OrderBreeding(project, this.#random);
    // An even number, so that it has a half.
    this.#population = LEAST_POPULATION + 2 * Math.round(project.count / (2 * ACTIVITIES_PER_PARENT));
    this.#keenChance = KEEN_CHANCE * smallness(project);
    this.#turn = Math.max(1, Math.round((1 - smallness(project)) * this.#population));
    const length = longestLength(project);
    const route = topologicalOrder(project);
    this.#forward = directionOf(project, length, route);
    // Lags that overlap their activities may turn round when time does: then both directions go forward.
    this.#backward = project.hasGeneralLags
      ? directionOf(project, length, route)
      : directionOf(reversedProject(project), length, route.slice().reverse());
    this.#next = this.#backward;
    const tail = tails(project, route);
    this.#sampling = new OrderSampling(project, tail, this.#random);
    this.lowerBound = Math.max(workBound(project), ...tail);
  }

  /** Proved best: it ends at the lower bound. */
  get isDone(): boolean {
    return this.bestEnd <= this.lowerBound;
  }

  /** Generates at least so many more schedules (up to two more), fewer when the best is proved. */
  step(schedules: number): void {
    const until = this.schedules + schedules;
    while (this.schedules < until && !this.isDone) {
      if (this.#joinings === 0 && this.#forward.population.length < this.#population) this.#found();
      else this.#breed();
    }
  }

  /** One more for both populations: a sampled order, justified backwards and forwards. */
  #found(): void {
    const first = this.#generate(this.#forward, this.#sampling.next());
    const back = this.#generate(this.#backward, sortedBy(first.starts, this.#backward.route));
    this.#backward.population.push(back);
    this.#forward.population.push(this.#generate(this.#forward, sortedBy(back.starts, this.#forward.route)));
  }

  #breed(): void {
    const to = this.#next;
    const parents = to === this.#forward ? this.#backward.population : this.#forward.population;
    const order = this.#breeding.child(to.project, () => this.#parent(parents), to.route);
    const made = this.#generate(to, order);
    this.#enter(to.population, made);
    this.#made++;
    if (this.#made === this.#turn) {
      this.#made = 0;
      this.#next = to === this.#forward ? this.#backward : this.#forward;
    }
    this.#stagnant = made.end < this.#breedEnd ? 0 : this.#stagnant + 1;
    this.#breedEnd = Math.min(this.#breedEnd, made.end);
    if (this.#stagnant >= MOST_STAGNANT * this.#project.count) this.#rest();
  }

  /** The breed is spent: it is joined with one that has come as far, or put aside for one that will. */
  #rest(): void {
    this.#stagnant = 0;
    this.#made = 0;
    this.#next = this.#backward;
    const spent: Breed = {
      joinings: this.#joinings,
      end: this.#breedEnd,
      forward: this.#forward.population,
      backward: this.#backward.population,
    };
    const other = this.#resting.at(-1);
    if (other?.joinings === spent.joinings) {
      this.#resting.pop();
      this.#joinings++;
      this.#breedEnd = Math.min(spent.end, other.end);
      this.#forward.population = this.#joined(spent.forward, other.forward);
      this.#backward.population = this.#joined(spent.backward, other.backward);
      return;
    }
    this.#resting.push(spent);
    this.#joinings = 0;
    this.#breedEnd = Number.MAX_SAFE_INTEGER;
    this.#forward.population = [];
    this.#backward.population = [];
  }

  /** The better half of each. */
  #joined(one: readonly Individual[], other: readonly Individual[]): Individual[] {
    const half = this.#population / 2;
    return [one, other].flatMap((all) => [...all].sort((a, b) => a.cost - b.cost).slice(0, half));
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

  #parent(population: readonly Individual[]): Individual {
    const one = this.#anyone(population);
    if (this.schedules >= KEEN_SCHEDULES || this.#random() >= this.#keenChance) return one;
    const other = this.#anyone(population);
    return other.cost < one.cost ? other : one;
  }

  #anyone(population: readonly Individual[]): Individual {
    const one = population[Math.floor(this.#random() * population.length)];
    if (one === undefined) throw new RangeError('anyone needs a population');
    return one;
  }
}

/** Two populations at rest. */
interface Breed {
  readonly joinings: number;
  readonly end: number;
  readonly forward: readonly Individual[];
  readonly backward: readonly Individual[];
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

/** The longest chain of lags through a project, with its last activity: no plan is over earlier. */
export function longestChain(project: Project): number {
  return Math.max(...tails(project, topologicalOrder(project)));
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
