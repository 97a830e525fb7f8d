import { mayDo } from '@/lib/schedule/alone-bound';
import type { AxisSession } from '@/lib/schedule/bench-axis';
import { mergedSpans } from '@/lib/schedule/bench-sessions';
import type { LagMoment, Stretch } from '@/lib/schedule/constraint-lags';
import { knownTerm, type ModelTerm, type ModelText, shiftedTerm, type YesNo } from '@/lib/schedule/constraint-text';
import type { Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** A task that the solver places. Start and finish are minutes of the problem. */
export interface ModelVisit {
  readonly task: Task;
  readonly start: LagMoment;
  readonly finish: LagMoment;
  /** null: nobody attends it. */
  readonly bench: BenchTerms | null;
  /** Windows that it may miss at a price, by whether it keeps them. */
  readonly windows: readonly { readonly link: Link; readonly isKept: YesNo }[];
}

/** A visit on the axis of the bench. */
export interface BenchTerms {
  readonly axisStart: ModelTerm;
  readonly duration: ModelTerm;
  /** Which session it begins in, as a number of the axis, from 1. */
  readonly session: ModelTerm;
  /** Whether it pays its set-up; null: it has none. */
  readonly pays: YesNo | null;
}

/** Between which minutes a visit must lie. */
export interface VisitFrame {
  readonly earliest: number;
  readonly latestFinish: number;
}

/** Writes down where open tasks may be: within which sessions, by whom, how long. */
export class VisitWriter {
  readonly #axisStarts: readonly number[];
  readonly #axisEnds: readonly number[];
  readonly #lengths: readonly number[];
  readonly #clockStarts: readonly number[];
  readonly #clockEnds: readonly number[];
  readonly #people: readonly number[];

  constructor(
    private readonly problem: PlanningProblem,
    private readonly text: ModelText,
    private readonly axis: readonly AxisSession[],
  ) {
    this.#axisStarts = axis.map(({ axisStart }) => axisStart);
    this.#axisEnds = axis.map(({ axisEnd }) => axisEnd);
    this.#lengths = axis.map(({ axisStart, axisEnd }) => axisEnd - axisStart);
    this.#clockStarts = axis.map(({ clockStart }) => clockStart);
    this.#clockEnds = axis.map(({ clockEnd }) => clockEnd);
    this.#people = axis.map(({ person }) => person);
  }

  /** null where no session has room for it within its frame. */
  write(task: Task, links: readonly Link[], frame: VisitFrame): ModelVisit | null {
    if (frame.earliest > frame.latestFinish) return null;
    if (task.attendedMinutes === 0) {
      const at = this.text.variable('w', frame.earliest, frame.latestFinish);
      const moment = { term: at, stretches: [{ least: at.least, most: at.most }] };
      return { task, start: moment, finish: moment, bench: null, windows: [] };
    }
    const windows = links.map((link) => ({ link, isKept: this.text.yesNo('m') }));
    const pays = task.setUp !== null && task.setUp.minutes > 0 ? this.text.yesNo('p') : null;
    const duration = this.#duration(task, pays, windows);
    const leastPiece = task.leastPieceMinutes ?? 0;
    const canBePutDown = leastPiece > 0 && duration.least > leastPiece;
    const inFirst = canBePutDown ? leastPiece : duration.least;
    const sessions = this.#sessionsFor(task, frame, inFirst, duration.least);
    if (sessions.length === 0) return null;
    const { text } = this;
    const session = text.chosenFrom('k', sessions);
    const axisStart = text.variable('s', this.#axisStarts[session.least - 1] ?? 0, (this.#axisEnds.at(-1) ?? 1) - 1);
    const start = text.variable('w', frame.earliest, frame.latestFinish - duration.least);
    const finish = text.variable('f', frame.earliest + duration.least, frame.latestFinish);
    const into = this.#within(session, start, axisStart, inFirst, sessions);
    const bench = { axisStart, duration, session, pays };
    const begins = { term: start, stretches: this.#stretches(sessions, start, 0) };
    if (!canBePutDown) {
      text.atMostZero([
        [1, into],
        [1, duration],
        [-1, text.entry(this.#lengths, session)],
      ]);
      this.#isSum(finish, [start, duration]);
      const ends = { term: finish, stretches: this.#stretches(sessions, finish, duration.least) };
      return { task, start: begins, finish: ends, bench, windows };
    }
    const lastSessions = this.#sessionsUntil(task, frame, session.least);
    const lastSession = text.chosenFrom('l', lastSessions);
    text.atMostZero([
      [1, shiftedTerm(into, leastPiece)],
      [-1, text.entry(this.#lengths, session)],
    ]);
    text.atMostZero([
      [1, session],
      [-1, lastSession],
    ]);
    if (new Set(this.#people).size > 1)
      text.zero([
        [1, text.entry(this.#people, session)],
        [-1, text.entry(this.#people, lastSession)],
      ]);
    const axisFinish = text.variable('g', axisStart.least + duration.least, this.#axisEnds.at(-1) ?? 1);
    this.#isSum(axisFinish, [axisStart, duration]);
    // The end of a session belongs to it, not to the next one.
    const last = this.#within(lastSession, shiftedTerm(finish, -1), shiftedTerm(axisFinish, -1), 1, lastSessions);
    text.atMostZero([
      [1, shiftedTerm(last, 1)],
      [-1, text.entry(this.#lengths, lastSession)],
    ]);
    const ends = { term: finish, stretches: this.#stretches(lastSessions, finish, 1) };
    return { task, start: begins, finish: ends, bench, windows };
  }

  /** How far into a session a moment is, on the clock and on the axis alike. */
  #within(
    session: ModelTerm,
    clock: ModelTerm,
    onAxis: ModelTerm,
    room: number,
    sessions: readonly number[],
  ): ModelTerm {
    const longest = Math.max(...sessions.map((k) => this.#lengths[k - 1] ?? 0));
    const into = this.text.variable('r', 0, longest - room);
    this.#isSum(clock, [into, this.text.entry(this.#clockStarts, session)]);
    this.#isSum(onAxis, [into, this.text.entry(this.#axisStarts, session)]);
    return into;
  }

  #isSum(whole: ModelTerm, parts: readonly ModelTerm[]): void {
    this.text.zero([[-1, whole], ...parts.map((part) => [1, part] as const)]);
  }

  /** Where within sessions a moment may fall, on the clock; sessions of several people may overlap there. */
  #stretches(sessions: readonly number[], moment: ModelTerm, after: number): readonly Stretch[] {
    const spans = sessions.flatMap((k) => {
      const startMinute = Math.max(moment.least, (this.#clockStarts[k - 1] ?? 0) + after);
      const endMinute = Math.min(moment.most, this.#clockEnds[k - 1] ?? 0) + 1;
      return startMinute < endMinute ? [{ startMinute, endMinute }] : [];
    });
    return mergedSpans(spans).map(({ startMinute, endMinute }) => ({ least: startMinute, most: endMinute - 1 }));
  }

  #duration(task: Task, pays: YesNo | null, windows: ModelVisit['windows']): ModelTerm {
    const setUp = pays === null ? 0 : (task.setUp?.minutes ?? 0);
    const remedies = windows.map(({ link }) => remedyMinutes(link));
    const longest = remedies.reduce((sum, minutes) => sum + minutes, task.attendedMinutes + setUp);
    if (longest === task.attendedMinutes) return knownTerm(longest);
    const duration = this.text.variable('d', task.attendedMinutes, longest);
    // A window that is kept takes its remedy off the longest.
    this.text.zero([
      [1, knownTerm(longest)],
      ...(pays === null ? [] : [[setUp, shiftedTerm(pays.asNumber, -1)] as const]),
      ...windows.map(({ isKept }, i) => [-(remedies[i] ?? 0), isKept.asNumber] as const),
      [-1, duration],
    ]);
    return duration;
  }

  #sessionsFor(task: Task, frame: VisitFrame, inFirst: number, length: number): readonly number[] {
    return this.axis.flatMap((session, k) => {
      const person = this.problem.people[session.person];
      const from = Math.max(session.clockStart, frame.earliest);
      const hasRoom = from + inFirst <= session.clockEnd && from + length <= frame.latestFinish;
      return person !== undefined && mayDo(person, task) && hasRoom ? [k + 1] : [];
    });
  }

  #sessionsUntil(task: Task, { latestFinish }: VisitFrame, first: number): readonly number[] {
    return this.axis.flatMap((session, k) => {
      const person = this.problem.people[session.person];
      const isOwn = person !== undefined && mayDo(person, task);
      return isOwn && k + 1 >= first && session.clockStart < latestFinish ? [k + 1] : [];
    });
  }
}

/** Minutes that a missed window adds. */
export function remedyMinutes(link: Link): number {
  return link.kind === 'greatest' ? (link.remedy?.minutes ?? 0) : 0;
}
