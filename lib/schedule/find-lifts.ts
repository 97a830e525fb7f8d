import { attendants, type Condition, without } from '@/lib/schedule/condition';
import { type Lift, lifted } from '@/lib/schedule/lift';
import type { PlaceJudge } from '@/lib/schedule/place-judge';
import type { MinuteSpan, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';

export interface FoundLifts {
  /** Each by itself lifts what it was looked for; the least of its kind. */
  readonly lifts: readonly Lift[];
  /** Whether they give the task a place in the whole problem, not only where one cause was alone. */
  readonly isWhole: boolean;
}

/** Longest change that is tried of a time. Chosen: four weeks of a cure or a window, half a day of a session. */
const MOST_LAG_MINUTES = 28 * 1440;
const MOST_SESSION_MINUTES = 720;
/** Most places that are added. Chosen: more than a shop would buy for one batch. */
const MOST_PLACES = 200;
/** Sessions that are tried with more minutes, nearest first. Chosen: a fortnight of evenings. */
const MOST_SESSIONS = 8;
/** Other batches that are tried to be left out. */
const MOST_LEFT_OUT = 8;

/**
 * The least changes that lift a cause, each tried with the judge: on `whole` first, and where none helps there, since
 * something else is in the way too, on `restricted`, where this cause is alone.
 */
export function findLifts(
  whole: PlanningProblem,
  restricted: PlanningProblem,
  conditions: readonly Condition[],
  route: readonly Task[],
  judge: PlaceJudge,
): FoundLifts {
  const inWhole = new LiftSearch(whole, conditions, route, judge).lifts();
  if (inWhole.length > 0) return { lifts: inWhole, isWhole: true };
  return { lifts: new LiftSearch(restricted, conditions, route, judge).lifts(), isWhole: false };
}

class LiftSearch {
  constructor(
    private readonly problem: PlanningProblem,
    private readonly conditions: readonly Condition[],
    private readonly route: readonly Task[],
    private readonly judge: PlaceJudge,
  ) {}

  lifts(): readonly Lift[] {
    const hours = this.#hours();
    const others = this.conditions.flatMap((condition) => this.#liftsOf(condition));
    return [...hours, ...others, ...this.#pin(), ...this.#leaveOut()];
  }

  #helps(...lifts: readonly Lift[]): boolean {
    return this.judge.planWithPlace(lifts.reduce(lifted, this.problem)) !== null;
  }

  /** The lift with the least number from `from` up to `most` that helps; none where not even `most` does. */
  #least(from: number, most: number, lift: (value: number) => Lift): readonly Lift[] {
    if (most < from || !this.#helps(lift(most))) return [];
    let low = from;
    let high = most;
    while (low < high && !this.judge.isSpent) {
      const middle = Math.floor((low + high) / 2);
      if (this.#helps(lift(middle))) high = middle;
      else low = middle + 1;
    }
    return [lift(high)];
  }

  /** The same with the greatest number. */
  #most(from: number, most: number, lift: (value: number) => Lift): readonly Lift[] {
    return this.#least(0, most - from, (less) => lift(most - less));
  }

  #task(taskId: string): Task | undefined {
    return this.problem.tasks.find(({ id }) => id === taskId);
  }

  #liftsOf(condition: Condition): readonly Lift[] {
    switch (condition.kind) {
      case 'other-work':
      case 'hours':
        return [];
      case 'who':
        return this.#those({ kind: 'anyone', taskId: condition.taskId });
      case 'fixed':
        return this.#unpin(condition.taskId);
      case 'one-go':
        return this.#oneGo(condition.taskId);
      case 'hold':
        return this.#hold(condition.taskId, condition.resourceId);
      case 'hold-cure': {
        const { taskId, resourceId } = condition;
        return this.#most(0, MOST_LAG_MINUTES, (minutes) => ({ kind: 'hold-within', taskId, resourceId, minutes }));
      }
      case 'cure': {
        const { linkId } = condition;
        return this.#most(0, MOST_LAG_MINUTES, (minutes) => ({ kind: 'cure-within', linkId, minutes }));
      }
      case 'window':
        return this.#window(condition.linkId);
      case 'batch-release': {
        const { batchId } = condition;
        const now = this.problem.batches.find(({ id }) => id === batchId)?.releaseMinute ?? 0;
        return this.#most(this.problem.nowMinute, now, (minute) => ({ kind: 'batch-release', batchId, minute }));
      }
      case 'release': {
        const { taskId } = condition;
        const now = this.#task(taskId)?.releaseMinute ?? 0;
        return this.#most(this.problem.nowMinute, now, (minute) => ({ kind: 'release', taskId, minute }));
      }
    }
  }

  #those(lift: Lift): readonly Lift[] {
    return this.#helps(lift) ? [lift] : [];
  }

  /** Letting a pin go helps where what was pinned has a place after it too. */
  #unpin(taskId: string): readonly Lift[] {
    if (this.#task(taskId)?.state.kind !== 'pinned') return [];
    const lift: Lift = { kind: 'unpin', taskId };
    return this.judge.planWithPlace(lifted(this.problem, lift), [taskId]) === null ? [] : [lift];
  }

  #oneGo(taskId: string): readonly Lift[] {
    const task = this.#task(taskId);
    if (task === undefined) return [];
    const shorter = this.#most(1, task.attendedMinutes - 1, (attendedMinutes) => ({
      kind: 'shorter',
      taskId,
      attendedMinutes,
    }));
    // What has a set-up is a mix: it cannot be put down.
    if (task.setUp !== null) return shorter;
    const putDown = this.#most(1, task.attendedMinutes - 1, (leastPieceMinutes) => ({
      kind: 'put-down',
      taskId,
      leastPieceMinutes,
    }));
    return [...putDown, ...shorter];
  }

  #hold(taskId: string, resourceId: string): readonly Lift[] {
    const amount = this.#task(taskId)?.holds.find((hold) => hold.resourceId === resourceId)?.amount ?? 0;
    return [
      ...this.#least(1, MOST_PLACES, (places) => ({ kind: 'places', resourceId, places })),
      ...this.#least(1, MOST_SESSION_MINUTES, (minutes) => ({ kind: 'open-longer', resourceId, minutes })),
      ...this.#most(1, amount - 1, (fewer) => ({ kind: 'fewer-places', taskId, resourceId, amount: fewer })),
    ];
  }

  #window(linkId: string): readonly Lift[] {
    const link = this.problem.links.find(({ id }) => id === linkId);
    const minutes = this.#task(link?.toTaskId ?? '')?.attendedMinutes ?? 0;
    return [
      ...this.#least(1, MOST_LAG_MINUTES, (more) => ({ kind: 'longer-window', linkId, minutes: more })),
      // Chosen: the remedy takes no longer than the task itself.
      ...this.#those({ kind: 'remedy', linkId, minutes }),
    ];
  }

  /** A pin that is let go, or set to where the task would come then. */
  #pin(): readonly Lift[] {
    const task = this.#task(this.route.at(-1)?.id ?? '');
    if (task?.state.kind !== 'pinned') return [];
    const taskId = task.id;
    const plan = this.judge.planWithPlace(lifted(this.problem, { kind: 'unpin', taskId }));
    const minute = plan?.placed.find((place) => place.taskId === taskId)?.startMinute;
    if (minute === undefined) return [];
    return [...this.#those({ kind: 'pin-at', taskId, minute }), { kind: 'unpin', taskId }];
  }

  #leaveOut(): readonly Lift[] {
    if (!this.conditions.some(({ kind }) => kind === 'other-work')) return [];
    const own = new Set(this.route.map(({ batchId }) => batchId));
    const others = this.problem.batches
      .filter(
        ({ id }) =>
          !own.has(id) && this.problem.tasks.some((task) => task.batchId === id && task.state.kind === 'open'),
      )
      .toSorted((a, b) => a.weight - b.weight)
      .slice(0, MOST_LEFT_OUT);
    for (const { id } of others) {
      const lift: Lift = { kind: 'leave-out', batchId: id };
      if (this.#helps(lift)) return [lift];
    }
    return [];
  }

  /** The fewest minutes more at the bench: at the end or the beginning of a session, else by themselves. */
  #hours(): readonly Lift[] {
    const short = this.conditions.flatMap((condition) => (condition.kind === 'hours' ? [condition] : []));
    if (short.length === 0) return [];
    const plan = this.judge.planWithPlace(without(this.problem, short));
    const places = short.flatMap(({ taskId }) => plan?.placed.find((place) => place.taskId === taskId) ?? []);
    let best: Extended | null = null;
    for (const candidate of this.#candidates(places)) {
      const most = best === null ? candidate.most : Math.min(candidate.most, best.minutes - 1);
      const [found] = this.#least(1, most, (minutes) => hoursLift(candidate, minutes));
      if (found?.kind === 'hours') best = { lift: found, minutes: found.endMinute - found.startMinute };
      if (this.judge.isSpent) break;
    }
    const alone = this.#ownSession(places);
    if (best === null) return alone;
    return [best.lift];
  }

  /** Sessions of those who may do what has no hours: the longest of each person, and those nearest to the places. */
  #candidates(places: readonly PlannedTask[]): readonly Candidate[] {
    const found = new Map<string, Candidate>();
    const { nowMinute, horizonMinute } = this.problem;
    for (const place of places) {
      const task = this.#task(place.taskId);
      if (task === undefined) continue;
      const near: (Candidate & { readonly rank: number })[] = [];
      for (const person of attendants(this.problem, task)) {
        const sessions = person.sessions.filter(({ endMinute }) => endMinute > nowMinute);
        const longest = Math.max(0, ...sessions.map(lengthOf));
        const isFirstLongest = sessions.find((session) => lengthOf(session) === longest);
        for (const [i, session] of sessions.entries()) {
          const isLongest = session === isFirstLongest;
          const rank = isLongest ? -1 : Math.abs(session.startMinute - place.startMinute);
          const room = Math.min(sessions[i + 1]?.startMinute ?? horizonMinute, horizonMinute) - session.endMinute;
          const before = session.startMinute - Math.max(nowMinute, sessions[i - 1]?.endMinute ?? nowMinute);
          const shared = { personId: person.id, session, rank };
          near.push({ ...shared, isAtEnd: true, most: Math.min(MOST_SESSION_MINUTES, room) });
          near.push({ ...shared, isAtEnd: false, most: Math.min(MOST_SESSION_MINUTES, before) });
        }
      }
      near.sort((a, b) => a.rank - b.rank);
      for (const { rank: _, ...candidate } of near.slice(0, 2 * MOST_SESSIONS)) {
        found.set(`${candidate.personId} ${candidate.session.startMinute} ${candidate.isAtEnd}`, candidate);
      }
    }
    return [...found.values()].filter(({ most }) => most > 0);
  }

  /** A session of its own where the task would be done if somebody were always there. */
  #ownSession(places: readonly PlannedTask[]): readonly Lift[] {
    for (const place of places) {
      const task = this.#task(place.taskId);
      const person = task === undefined ? undefined : attendants(this.problem, task)[0];
      if (person === undefined || place.finishMinute <= place.startMinute) continue;
      const { startMinute, finishMinute: endMinute } = place;
      const lift: Lift = { kind: 'hours', personId: person.id, startMinute, endMinute, extends: null };
      if (this.#helps(lift)) return [lift];
    }
    return [];
  }
}

interface Candidate {
  readonly personId: string;
  readonly session: MinuteSpan;
  readonly isAtEnd: boolean;
  readonly most: number;
}

interface Extended {
  readonly lift: Lift;
  readonly minutes: number;
}

function lengthOf({ startMinute, endMinute }: MinuteSpan): number {
  return endMinute - startMinute;
}

function hoursLift({ personId, session, isAtEnd }: Candidate, minutes: number): Lift {
  const startMinute = isAtEnd ? session.endMinute : session.startMinute - minutes;
  const endMinute = isAtEnd ? session.endMinute + minutes : session.startMinute;
  return { kind: 'hours', personId, startMinute, endMinute, extends: session };
}
