import { COMMON_REMEDY, milestoneText } from '@/lib/batch/describe-status';
import { statedMilestones } from '@/lib/batch/next-releases';
import { type IndexedOperation, planIndex } from '@/lib/batch/plan-index';
import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import { type Lag, NO_LAG } from '@/lib/schedule/lag';
import type { Hold, Link, Task, TaskState } from '@/lib/schedule/planning-problem';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { type CureTables, NEVER_LAG } from './cure-tables';
import { allowedAt, closesAt } from './done-cures';
import type { PlanBatch, PlanInput } from './plan-input';
import type { PlanNote, TaskAbout } from './task-about';
import { mostPieces, type Visit, visitsOf } from './visits';

/** Getting ready, weighing and clearing up of one adhesive in a session, where nobody has said. Chosen. */
const MIXING_MINUTES = 5;
/** Least stretch in which plain work is taken up again, where nobody has said. Chosen. */
const LEAST_PIECE_MINUTES = 30;
/** Washing and sanding of a piece whose window has closed already, where nobody has said. Chosen. */
const REMEDY_MINUTES = 5;

/** The tasks of one batch. */
export interface BatchTasks {
  readonly tasks: readonly Task[];
  readonly links: readonly Link[];
  readonly about: ReadonlyMap<string, TaskAbout>;
  readonly notes: readonly PlanNote[];
}

/** Turns the route of a batch, and what has happened on it, into tasks and the times between them. */
export function batchTasks(input: PlanInput, batch: PlanBatch, epochAt: Instant, tables: CureTables): BatchTasks {
  return new BatchTaskMaker(input, batch, epochAt, tables).make();
}

interface MadeVisit extends Visit {
  readonly openId: string;
  readonly doneId: string;
  /** When the last done piece of it was done, and when the first was begun, in minutes. */
  readonly doneMinute: number;
  readonly begunMinute: number;
}

interface MadeOperation {
  readonly indexed: IndexedOperation;
  readonly sheet: AdhesiveSheet | null;
  readonly visits: readonly MadeVisit[];
}

class BatchTaskMaker {
  readonly #tasks = new Map<string, Task>();
  readonly #links: Link[] = [];
  readonly #about = new Map<string, TaskAbout>();
  readonly #notes = new Map<string, PlanNote>();
  readonly #operations: readonly MadeOperation[];

  constructor(
    private readonly input: PlanInput,
    private readonly batch: PlanBatch,
    private readonly epochAt: Instant,
    private readonly tables: CureTables,
  ) {
    const { known, head } = batch;
    this.#operations = planIndex(known.plan).operations.map((indexed, index) => {
      const { operation } = indexed;
      const sheet = this.#sheetOf(operation.materialId);
      const most = mostPieces(operation, input.planning.get(operation.id), sheet);
      const visits = visitsOf(known, index, most).map((visit) => {
        const id = `${head.id}:${operation.id}.${visit.number}`;
        const doneAts = visit.done.flatMap((piece) => piece.operations[index]?.doneAt ?? []);
        const doneMinute = this.#minute(Math.max(...doneAts), Math.ceil);
        const begunMinute = this.#minute(Math.min(...doneAts), Math.floor);
        return { ...visit, openId: id, doneId: `${id}:done`, doneMinute, begunMinute };
      });
      return { indexed, sheet, visits };
    });
  }

  make(): BatchTasks {
    for (const [index, operation] of this.#operations.entries()) {
      for (const visit of operation.visits) {
        if (visit.open.length > 0) this.#openTask(operation, visit);
        if (visit.done.length > 0) this.#heldOrReady(operation, visit, index);
      }
      for (const need of operation.indexed.needs) {
        const before = this.#operations[need.index];
        if (before === undefined) continue;
        for (const visit of operation.visits) {
          if (visit.open.length > 0) this.#need(operation, visit, before, need.index, need.wait);
        }
      }
    }
    return {
      tasks: [...this.#tasks.values()],
      links: this.#links,
      about: this.#about,
      notes: [...this.#notes.values()],
    };
  }

  #openTask(made: MadeOperation, visit: MadeVisit): void {
    const { operation } = made.indexed;
    const planning = this.input.planning.get(operation.id);
    const isWork = operation.kind === 'work';
    const attendedMinutes = Math.ceil(operation.attendedMinutes * visit.open.length);
    const setUpMinutes = Math.ceil(planning?.setUpMinutes ?? (isWork ? 0 : MIXING_MINUTES));
    const setUp =
      setUpMinutes === 0 ? null : { key: operation.materialId ?? `work ${operation.name}`, minutes: setUpMinutes };
    const leastPiece = planning === undefined ? (isWork ? LEAST_PIECE_MINUTES : null) : planning.leastPieceMinutes;
    const canBePutDown = leastPiece !== null && setUp === null && attendedMinutes > leastPiece;
    this.#tasks.set(visit.openId, {
      id: visit.openId,
      batchId: this.batch.head.id,
      name: operation.name,
      attendedMinutes,
      by: this.#by(planning?.personId ?? null, planning?.skill ?? null),
      leastPieceMinutes: canBePutDown ? Math.ceil(leastPiece) : null,
      setUp,
      releaseMinute: 0,
      holds: this.#holds(made, visit.open.length),
      readyAfter: this.#readyAfter(made),
      state: this.#state(operation.id, visit, attendedMinutes),
    });
    this.#tell(made, visit, visit.openId, false);
  }

  #state(operationId: string, visit: MadeVisit, attendedMinutes: number): TaskState {
    const running = this.batch.known.state.mixes.find(
      (mix) => mix.operationId === operationId && mix.closedAt === null && this.#isMixOf(visit, mix.mixId),
    );
    if (running !== undefined) {
      const startMinute = this.#minute(running.mixedAt, Math.floor);
      const nowMinute = this.#minute(this.input.nowAt, Math.ceil);
      const finishMinute = Math.max(nowMinute, startMinute) + attendedMinutes;
      return { kind: 'under-way', startMinute, finishMinute, personId: this.#knownPerson(running.personId) };
    }
    const taskKey = `${operationId}.${visit.number}`;
    const pin = this.input.pins.find((one) => one.batchId === this.batch.head.id && one.taskKey === taskKey);
    if (pin === undefined) return { kind: 'open' };
    return {
      kind: 'pinned',
      startMinute: this.#minute(pin.startAt, Math.round),
      personId: this.#knownPerson(pin.personId),
    };
  }

  /** A running mix belongs to the visit whose pieces it was used on; unused, to the first visit that is open. */
  #isMixOf(visit: MadeVisit, mixId: string): boolean {
    const isUsedOn = (candidate: Visit) =>
      [...candidate.done, ...candidate.open].some((piece) =>
        piece.operations.some(
          ({ coat, joints }) => coat?.mixId === mixId || joints.some((joint) => joint.set?.mixId === mixId),
        ),
      );
    if (isUsedOn(visit)) return true;
    const visits = this.#operations.find(({ visits: own }) => own.includes(visit))?.visits ?? [];
    return !visits.some(isUsedOn) && visits.find(({ open }) => open.length > 0) === visit;
  }

  /** What is done still takes its places, or has the batch wait, while it cures. */
  #heldOrReady(made: MadeOperation, visit: MadeVisit, index: number): void {
    const { operation, neededBy } = made.indexed;
    const planning = this.input.planning.get(operation.id);
    const nowMinute = this.#minute(this.input.nowAt, Math.floor);
    const until = planning?.holdsUntil ?? 'attended';
    const holdEnd = until === 'attended' ? 0 : this.#doneLag(visit, index, until);
    const isHeld = planning?.resourceId != null && (holdEnd === null || visit.doneMinute + holdEnd > nowMinute);
    const last = made.sheet === null ? undefined : lastMilestone(made.sheet);
    const ready = neededBy.length > 0 || last === undefined ? 0 : this.#doneLag(visit, index, last);
    const isCuring = ready === null || visit.doneMinute + ready > nowMinute;
    if (!isHeld && !isCuring) return;
    const holds = isHeld ? this.#holds(made, visit.done.length) : [];
    const end: Lag = holdEnd === null ? NEVER_LAG : { kind: 'fixed', minutes: holdEnd };
    this.#doneTask(made, visit, {
      holds: holds.map((hold) => ({ ...hold, until: end })),
      readyAfter: ready === null ? NEVER_LAG : { kind: 'fixed', minutes: ready },
    });
  }

  #doneTask(made: MadeOperation, visit: MadeVisit, more: Pick<Task, 'holds' | 'readyAfter'>): void {
    if (this.#tasks.has(visit.doneId)) return;
    this.#tasks.set(visit.doneId, {
      id: visit.doneId,
      batchId: this.batch.head.id,
      name: made.indexed.operation.name,
      attendedMinutes: 0,
      by: { kind: 'anyone' },
      leastPieceMinutes: null,
      setUp: null,
      releaseMinute: 0,
      ...more,
      state: {
        kind: 'done',
        startMinute: visit.begunMinute,
        finishMinute: visit.doneMinute,
        personId: null,
      },
    });
    this.#tell(made, visit, visit.doneId, true);
  }

  #need(made: MadeOperation, visit: MadeVisit, before: MadeOperation, beforeIndex: number, wait: string): void {
    const numbers = new Set(visit.open.map((piece) => piece.number));
    for (const earlier of before.visits) {
      if (earlier.open.some((piece) => numbers.has(piece.number))) this.#planned(made, visit, before, earlier, wait);
      const done = earlier.done.filter((piece) => numbers.has(piece.number));
      if (done.length > 0) this.#happened(made, visit, before, { ...earlier, done }, beforeIndex, wait);
    }
  }

  /** The wait for something that is still to be done. */
  #planned(made: MadeOperation, visit: MadeVisit, before: MadeOperation, earlier: MadeVisit, wait: string): void {
    const ends = { fromTaskId: earlier.openId, from: 'finish', toTaskId: visit.openId, to: 'start' } as const;
    const id = `${earlier.openId}>${visit.openId}`;
    const milestone = openingOf(wait);
    const lag = milestone === null ? NO_LAG : this.#cure(before, milestone);
    this.#links.push({ id, kind: 'least', ...ends, lag });
    const closing = wait === 'recoat' && before.sheet !== null ? this.tables.lag(before.sheet, 'recoat-by') : null;
    if (closing === null) return;
    // The window runs from the first cup, and the last piece is to be coated before it closes.
    const window = { ...ends, from: 'start', to: 'finish' } as const;
    this.#links.push({
      id: `${id}!`,
      kind: 'greatest',
      ...window,
      lag: closing,
      remedy: this.#remedy(made, visit, before),
    });
  }

  /** The wait for something that is done: its cure is computed from what was logged. */
  #happened(
    made: MadeOperation,
    visit: MadeVisit,
    before: MadeOperation,
    earlier: MadeVisit,
    beforeIndex: number,
    wait: string,
  ): void {
    const milestone = openingOf(wait);
    const nowMinute = this.#minute(this.input.nowAt, Math.floor);
    const lag = milestone === null ? 0 : this.#doneLag(earlier, beforeIndex, milestone);
    const isWaiting = lag === null || earlier.doneMinute + lag > nowMinute;
    const closing = wait === 'recoat' ? closesAt(this.batch.known, earlier.done, beforeIndex) : null;
    if (!isWaiting && closing === null) return;
    this.#doneTask(before, earlier, { holds: [], readyAfter: NO_LAG });
    const ends = { fromTaskId: earlier.doneId, from: 'finish', toTaskId: visit.openId } as const;
    const id = `${earlier.doneId}>${visit.openId}`;
    const least: Lag = lag === null ? NEVER_LAG : { kind: 'fixed', minutes: lag };
    this.#links.push({ id, kind: 'least', ...ends, to: 'start', lag: least });
    if (closing === null) return;
    const minutes = this.#minute(closing, Math.floor) - earlier.doneMinute;
    const said = this.#remedy(made, visit, before);
    const isOver = closing <= this.input.nowAt;
    const remedy =
      said ?? (isOver ? { minutes: REMEDY_MINUTES * visit.open.length, words: remedyWords(before.sheet) } : null);
    const greatest: Lag = { kind: 'fixed', minutes };
    this.#links.push({ id: `${id}!`, kind: 'greatest', ...ends, to: 'finish', lag: greatest, remedy });
  }

  #remedy(made: MadeOperation, visit: MadeVisit, before: MadeOperation) {
    const perPiece = this.input.planning.get(made.indexed.operation.id)?.remedyMinutes ?? null;
    if (perPiece === null) return null;
    return { minutes: Math.ceil(perPiece * visit.open.length), words: remedyWords(before.sheet) };
  }

  /** Minutes from the last done piece to its milestone, by the log; null: not in sight or not to be judged. */
  #doneLag(visit: MadeVisit, index: number, milestone: Milestone): number | null {
    const at = allowedAt(this.batch.known, visit.done, index, milestone);
    return at === null ? null : Math.max(0, this.#minute(at, Math.ceil) - visit.doneMinute);
  }

  #cure(made: MadeOperation, milestone: Milestone): Lag {
    const lag = made.sheet === null ? null : this.tables.lag(made.sheet, milestone);
    if (lag !== null) return lag;
    const { operation } = made.indexed;
    const text = `Batch ${this.batch.head.number}: ${milestoneText(milestone)} after ${operation.name} cannot be planned, since no data sheet entered gives the hours. Enter them in Stock.`;
    this.#notes.set(text, { batchId: this.batch.head.id, text });
    return NEVER_LAG;
  }

  #holds(made: MadeOperation, pieces: number): readonly Hold[] {
    const planning = this.input.planning.get(made.indexed.operation.id);
    if (planning?.resourceId == null) return [];
    const { resourceId, resourceShare, holdsUntil } = planning;
    const until = holdsUntil === 'attended' ? NO_LAG : this.#cure(made, holdsUntil);
    return [{ resourceId, amount: resourceShare === 'piece' ? pieces : 1, until }];
  }

  #readyAfter(made: MadeOperation): Lag {
    if (made.indexed.neededBy.length > 0 || made.sheet === null) return NO_LAG;
    const last = lastMilestone(made.sheet);
    return last === undefined ? NO_LAG : this.#cure(made, last);
  }

  #by(personId: string | null, skill: string | null): Task['by'] {
    const known = this.#knownPerson(personId);
    if (known !== null) return { kind: 'person', personId: known };
    return skill === null ? { kind: 'anyone' } : { kind: 'skill', skill };
  }

  #knownPerson(personId: string | null): string | null {
    return this.input.people.some((person) => person.id === personId) ? personId : null;
  }

  #sheetOf(materialId: string | null): AdhesiveSheet | null {
    return materialId === null ? null : (this.input.materials.get(materialId)?.sheet ?? null);
  }

  #tell(made: MadeOperation, visit: MadeVisit, taskId: string, isDone: boolean): void {
    const { operation } = made.indexed;
    const { id: batchId, number: batchNumber, modelName } = this.batch.head;
    const { materialId } = operation;
    this.#about.set(taskId, {
      batchId,
      batchNumber,
      modelName,
      operationId: operation.id,
      taskKey: `${operation.id}.${visit.number}`,
      operationName: operation.name,
      kind: operation.kind,
      materialId,
      materialName: materialId === null ? null : (this.input.materials.get(materialId)?.name ?? null),
      pieces: (isDone ? visit.done : visit.open).map((piece) => piece.number),
      materialWait: null,
    });
  }

  #minute(at: Instant, round: (value: number) => number): number {
    return Number.isFinite(at) ? round((at - this.epochAt) / MINUTE_MS) : 0;
  }
}

function openingOf(wait: string): Milestone | null {
  switch (wait) {
    case 'handle':
    case 'sand':
    case 'paint':
    case 'pull-test':
    case 'ship':
      return wait;
    case 'recoat':
      return 'recoat-from';
    default:
      return null;
  }
}

function lastMilestone(sheet: AdhesiveSheet): Milestone | undefined {
  return statedMilestones(sheet).findLast((milestone) => milestone !== 'recoat-by');
}

function remedyWords(sheet: AdhesiveSheet | null): string {
  return sheet?.recoatRemedy ?? COMMON_REMEDY;
}
