import type { Project } from '@/lib/schedule/project';
import { sortedBy } from '@/lib/schedule/serial-generator';

/** How much of a schedule, at least and at most, a child has of its father. Chosen on the published instances. */
const LEAST_SHARE = 0.1;
const MOST_SHARE = 0.5;
/** How often that is where the father's resources are fullest, and not just anywhere. Chosen likewise. */
const PEAK_CHANCE = 0.7;
/** How many activities of an order are moved in a child of two, and in a child of one. Chosen likewise. */
const MOVES_AFTER_CROSSING = 1;
const MOVES_ALONE = 3;
/** How often a child is of one alone, in a small project. Chosen likewise. */
const ALONE_CHANCE = 0.3;
/** Activities of a small project. Chosen: as many as the smallest published ones have. */
const SMALL_COUNT = 30;

/** A schedule as a parent: when each activity begins, and when the last one is over. */
export interface Parent {
  readonly starts: Int32Array;
  readonly end: number;
}

/** Schedules of a project make the order of a further one. */
export class OrderBreeding {
  readonly #project: Project;
  readonly #random: () => number;
  /** Of all resources together, the share that each activity holds. */
  readonly #share: Float64Array;
  readonly #aloneChance: number;

  constructor(project: Project, random: () => number) {
    this.#project = project;
    this.#random = random;
    const { count, demand, capacity, resourceCount } = project;
    this.#aloneChance = ALONE_CHANCE * smallness(project);
    this.#share = Float64Array.from({ length: count }, (_, j) => {
      let share = 0;
      for (let k = 0; k < resourceCount; k++) {
        share += (demand[j * resourceCount + k] ?? 0) / Math.max(1, capacity[k] ?? 1);
      }
      return share;
    });
  }

  /**
   * Keys of a child: a stretch of time as the father has it, and what he does before and after it in the mother's
   * order. Activities keep after those they follow, as in both parents.
   * Source: crossover at the peak of resource use, Debels and Vanhoucke 2005, Valls et al. 2008 (from memory).
   */
  #cross(father: Parent, mother: Parent): Int32Array {
    const { end } = father;
    const share = LEAST_SHARE + (MOST_SHARE - LEAST_SHARE) * this.#random();
    const length = Math.max(1, Math.round(end * share));
    const anywhere = Math.floor(this.#random() * (end - length + 1));
    const from = this.#random() < PEAK_CHANCE ? this.#peak(father, length) : anywhere;
    const to = from + length;
    const section = Math.max(end, mother.end) + 1;
    return father.starts.map((start, j) => {
      const ofMother = mother.starts[j] ?? 0;
      if (start < from) return ofMother;
      return start < to ? section + start : 2 * section + ofMother;
    });
  }

  /**
   * The order of a child, for the project that it is to be generated in: of two parents, or now and then of one alone,
   * with a few activities moved. `anyone` answers with a parent, `route` breaks ties.
   */
  child(project: Project, anyone: () => Parent, route: Int32Array): Int32Array {
    const isAlone = this.#random() < this.#aloneChance;
    const order = sortedBy(isAlone ? anyone().starts : this.#cross(anyone(), anyone()), route);
    for (let move = isAlone ? MOVES_ALONE : MOVES_AFTER_CROSSING; move > 0; move--) this.#move(project, order);
    return order;
  }

  /** Moves one activity to anywhere between the last that it follows and the first that follows it. */
  #move({ outOf }: Project, order: Int32Array): void {
    const at = Math.floor(this.#random() * order.length);
    const mover = order[at] ?? 0;
    let first = at;
    while (first > 0 && !follows(outOf, mover, order[first - 1] ?? 0)) first--;
    let last = at;
    while (last < order.length - 1 && !follows(outOf, order[last + 1] ?? 0, mover)) last++;
    if (first === last) return;
    const place = first + Math.floor(this.#random() * (last - first));
    const to = place < at ? place : place + 1;
    if (to < at) order.copyWithin(to + 1, to, at);
    else order.copyWithin(at, at + 1, to + 1);
    order[to] = mover;
  }

  /** Where the stretch of this length begins in which the resources are fullest. */
  #peak({ starts, end }: Parent, length: number): number {
    const { count, duration } = this.#project;
    const change = new Float64Array(end + 1);
    for (let j = 0; j < count; j++) {
      const start = starts[j] ?? 0;
      const stop = start + (duration[j] ?? 0);
      change[start] = (change[start] ?? 0) + (this.#share[j] ?? 0);
      change[stop] = (change[stop] ?? 0) - (this.#share[j] ?? 0);
    }
    const used = new Float64Array(end + 1);
    let load = 0;
    for (let t = 0; t < end; t++) {
      load += change[t] ?? 0;
      used[t + 1] = (used[t] ?? 0) + load;
    }
    let peak = 0;
    let most = -1;
    for (let from = 0; from + length <= end; from++) {
      const within = (used[from + length] ?? 0) - (used[from] ?? 0);
      if (within <= most) continue;
      most = within;
      peak = from;
    }
    return peak;
  }
}

/**
 * 1 for a small project, less the larger it is: what helps a small one, whose parents are soon too much alike for
 * crossing to make anything new, holds up a large one. The square of the size was chosen.
 */
export function smallness({ count }: Project): number {
  return Math.min(1, SMALL_COUNT / count) ** 2;
}

function follows(outOf: Project['outOf'], second: number, first: number): boolean {
  for (let k = outOf.first[first] ?? 0; k < (outOf.first[first + 1] ?? 0); k++) {
    if (outOf.other[k] === second) return true;
  }
  return false;
}
