import type { Lag, LagTable } from '@/lib/schedule/lag';
import type { Instant } from '@/lib/units/instant';

/**
 * What the planner is asked: batches of tasks, the people and places they need, and the times between them.
 *
 * All moments are whole minutes from `epochAt`, so a night with a clock change is as long as it is: wall times were
 * turned into minutes before (`benchSessions`). Lists may be empty; ids are unique within each list.
 */
export interface PlanningProblem {
  /** The instant of minute 0. */
  readonly epochAt: Instant;
  /** Nothing that is still open begins before it. */
  readonly nowMinute: number;
  /** Nothing is planned to end after it. */
  readonly horizonMinute: number;
  readonly batches: readonly PlannedBatch[];
  readonly tasks: readonly Task[];
  readonly links: readonly Link[];
  readonly people: readonly BenchPerson[];
  readonly resources: readonly Resource[];
  readonly lagTables: readonly LagTable[];
}

export interface PlannedBatch {
  readonly id: string;
  readonly name: string;
  /** No open task of the batch begins before it (order taken, material there). */
  readonly releaseMinute: number;
  /** When it should be ready; null: whenever. */
  readonly dueMinute: number | null;
  /** What a minute late costs, relative to the others; 0 or more. */
  readonly weight: number;
}

/** Who may attend a task. */
export type TaskBy =
  | { readonly kind: 'anyone' }
  | { readonly kind: 'skill'; readonly skill: string }
  | { readonly kind: 'person'; readonly personId: string };

/**
 * One visit to the bench: minutes that a person attends, then what runs on alone. A coat that is laid on in three
 * mixes is three tasks. A task of no attended minutes needs nobody.
 */
export interface Task {
  readonly id: string;
  readonly batchId: string;
  readonly name: string;
  readonly attendedMinutes: number;
  readonly by: TaskBy;
  /** null: done in one go within one session. Else it may be put down and taken up again, in pieces of at least this. */
  readonly leastPieceMinutes: number | null;
  /**
   * Getting ready and clearing up, shared by all tasks of one key that the same person does in one session: the
   * earliest of them pays the minutes. Not for tasks that may be put down.
   */
  readonly setUp: { readonly key: string; readonly minutes: number } | null;
  /** Not before it, whatever the batch says (a glue that comes on Friday). */
  readonly releaseMinute: number;
  readonly holds: readonly Hold[];
  /** From its finish until the batch counts it as ready (the milestone that ships). */
  readonly readyAfter: Lag;
  readonly state: TaskState;
}

/** Places of a resource that a task takes from its start until `until`, counted from its finish. */
export interface Hold {
  readonly resourceId: string;
  readonly amount: number;
  /** Fixed 0: only while it is attended. A rack slot counts as free when the cure has reached its milestone. */
  readonly until: Lag;
}

/** `done` and `under-way` are what happened; `pinned` is what the maker wants. None of them is ever moved. */
export type TaskState =
  | { readonly kind: 'open' }
  | { readonly kind: 'pinned'; readonly startMinute: number; readonly personId: string | null }
  | {
      readonly kind: 'under-way';
      readonly startMinute: number;
      /** When it is expected to be put down. */
      readonly finishMinute: number;
      readonly personId: string | null;
    }
  | {
      readonly kind: 'done';
      readonly startMinute: number;
      readonly finishMinute: number;
      readonly personId: string | null;
    };

/** A moment of a task: its start (with its set-up), or its finish (end of the attended minutes). */
export type TaskMoment = 'start' | 'finish';

/**
 * The time between a moment of one task and a moment of another. `least`: the later moment comes at the earliest so
 * long after. `greatest`: at the latest so long after; with a remedy the window may be missed at its price.
 */
export type Link =
  | (LinkEnds & { readonly kind: 'least'; readonly lag: Lag })
  | (LinkEnds & {
      readonly kind: 'greatest';
      readonly lag: Lag;
      /** Minutes added to the attended minutes of `toTaskId` once the window has closed; null: it must be met. */
      readonly remedy: { readonly minutes: number; readonly words: string } | null;
    });

interface LinkEnds {
  readonly id: string;
  readonly fromTaskId: string;
  readonly from: TaskMoment;
  readonly toTaskId: string;
  readonly to: TaskMoment;
}

/** Someone who can attend, with the stretches in which they can, in order and apart. */
export interface BenchPerson {
  readonly id: string;
  readonly name: string;
  readonly skills: readonly string[];
  readonly sessions: readonly MinuteSpan[];
}

export interface MinuteSpan {
  readonly startMinute: number;
  readonly endMinute: number;
}

/** Places of one kind: rack slots, rotator places, clamps, a booth. */
export interface Resource {
  readonly id: string;
  readonly name: string;
  readonly capacity: number;
  /** From each minute on, in order, another capacity than before: closed at night, broken, one more from Friday. */
  readonly changes: readonly { readonly fromMinute: number; readonly capacity: number }[];
}

/** Whether a task's time is given: the planner works round it. */
export function isFixed(task: Task): boolean {
  return task.state.kind !== 'open';
}
