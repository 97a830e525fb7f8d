import type { Project } from '@/lib/schedule/project';

/** How much of a schedule, at least and at most, a child has of its father. Chosen on the published instances. */
const LEAST_SHARE = 0.2;
const MOST_SHARE = 0.7;
/** How often that is where the father's resources are fullest, and not just anywhere. Chosen likewise. */
const PEAK_CHANCE = 0.7;
/** How many activities of an order are moved forward, and by how many places at most. Chosen likewise. */
const MOVES = 2;
const MOST_PLACES = 10;

/** A schedule as a parent: when each activity begins, and when the last one is over. */
export interface Parent {
  readonly starts: Int32Array;
  readonly end: number;
}

/** Two schedules of a project make the keys of a third, by which its activities are put in order. */
export class OrderBreeding {
  readonly #project: Project;
  readonly #random: () => number;
  /** Of all resources together, the share that each activity holds. */
  readonly #share: Float64Array;

  constructor(project: Project, random: () => number) {
    this.#project = project;
    this.#random = random;
    const { count, demand, capacity, resourceCount } = project;
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
  cross(father: Parent, mother: Parent): Int32Array {
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

  /** Moves a few activities forward in an order, none before one that it follows. `project`: the one it is an order of. */
  shake({ outOf }: Project, order: Int32Array): void {
    for (let move = 0; move < MOVES; move++) {
      let at = Math.floor(this.#random() * order.length);
      for (let places = 1 + Math.floor(this.#random() * MOST_PLACES); places > 0 && at > 0; places--, at--) {
        const before = order[at - 1] ?? 0;
        const mover = order[at] ?? 0;
        if (follows(outOf, mover, before)) break;
        order[at - 1] = mover;
        order[at] = before;
      }
    }
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

function follows(outOf: Project['outOf'], second: number, first: number): boolean {
  for (let k = outOf.first[first] ?? 0; k < (outOf.first[first + 1] ?? 0); k++) {
    if (outOf.other[k] === second) return true;
  }
  return false;
}
