import type { AxisSession } from '@/lib/schedule/bench-axis';
import { compileProblem } from '@/lib/schedule/compiled-problem';
import type { ConstraintModel } from '@/lib/schedule/constraint-model';
import { enterHeld } from '@/lib/schedule/kept-places';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import { comparePlanValues, planValue } from '@/lib/schedule/plan-value';
import type { MinuteSpan, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';

/** What the solver says of a model: one number each for its `taskIds`, or for its `windowIds`. */
export interface ConstraintAnswer {
  /** Minutes of the problem. */
  readonly starts: readonly number[];
  /** Sessions of the axis, counted from 1; 0: nobody attends it. */
  readonly sessions: readonly number[];
  /** 1: it pays its set-up. */
  readonly pays: readonly number[];
  /** 1: the window is kept. */
  readonly kept: readonly number[];
  /** What the plan costs in the model: whole weights times minutes late. */
  readonly late: readonly number[];
}

/**
 * The plan that an answer stands for, made by our own decoder so that it always holds: in the order of the answer's
 * starts, in that of its finishes, and with everything where the answer has it; the best of the three.
 */
export function planOfAnswer(
  problem: PlanningProblem,
  before: ShopPlan,
  model: ConstraintModel,
  answer: ConstraintAnswer,
): ShopPlan {
  const placed = placesOf(problem, before, model, answer);
  const compiled = compileProblem(problem);
  const order = (momentOf: (place: PlannedTask) => number) => {
    const at = new Map(placed.map((place) => [place.taskId, momentOf(place)]));
    const minute = (task: number) => at.get(problem.tasks[task]?.id ?? '') ?? Number.MAX_SAFE_INTEGER;
    return [...compiled.open].sort((a, b) => minute(a) - minute(b) || a - b);
  };
  const decoder = new PlanDecoder(compiled);
  const byStart = order(({ startMinute }) => startMinute);
  const byFinish = order(({ finishMinute }) => finishMinute);
  const plans = [byStart, byFinish].map((tasks) => {
    decoder.decode(tasks);
    return decoder.plan();
  });
  const starts = new Map(placed.map(({ taskId, startMinute }) => [taskId, startMinute]));
  enterHeld(decoder, { placed, unplaced: [] });
  for (const task of compiled.open) {
    decoder.floor[task] = starts.get(problem.tasks[task]?.id ?? '') ?? decoder.floor[task] ?? 0;
  }
  decoder.decode(byStart);
  return plans.reduce(
    (best, plan) => (comparePlanValues(planValue(problem, plan), planValue(problem, best)) < 0 ? plan : best),
    decoder.plan(),
  );
}

/** Every task where the answer has it, or where it was. */
function placesOf(
  problem: PlanningProblem,
  before: ShopPlan,
  model: ConstraintModel,
  answer: ConstraintAnswer,
): readonly PlannedTask[] {
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const missed = new Set(model.windowIds.filter((_, i) => answer.kept[i] === 0));
  const placed = model.taskIds.flatMap((taskId, i): PlannedTask[] => {
    const task = tasks.get(taskId);
    const startMinute = answer.starts[i];
    if (task === undefined || startMinute === undefined) return [];
    const session = model.axis[(answer.sessions[i] ?? 0) - 1];
    const remedied = problem.links.filter((link) => link.toTaskId === taskId && missed.has(link.id));
    const setUpMinutes = answer.pays[i] === 1 ? (task.setUp?.minutes ?? 0) : 0;
    const added = remedied.reduce(
      (sum, link) => sum + (link.kind === 'greatest' ? (link.remedy?.minutes ?? 0) : 0),
      setUpMinutes,
    );
    const pieces = session === undefined ? [] : piecesOf(problem, task, session, startMinute, added);
    return [
      {
        taskId,
        personId: session === undefined ? null : (problem.people[session.person]?.id ?? null),
        startMinute,
        finishMinute: pieces.at(-1)?.endMinute ?? startMinute,
        pieces,
        setUpMinutes,
        remedyLinkIds: remedied.map(({ id }) => id),
      },
    ];
  });
  const isNew = new Set(model.taskIds);
  return [...before.placed.filter(({ taskId }) => !isNew.has(taskId)), ...placed];
}

/** From its start on, over the end of a session into the next one where it may be put down. */
function piecesOf(
  problem: PlanningProblem,
  task: Task,
  { person }: AxisSession,
  startMinute: number,
  added: number,
): readonly MinuteSpan[] {
  const pieces: MinuteSpan[] = [];
  let left = task.attendedMinutes + added;
  for (const session of problem.people[person]?.sessions ?? []) {
    const from = Math.max(startMinute, session.startMinute);
    if (left <= 0 || from >= session.endMinute) continue;
    const endMinute = task.leastPieceMinutes === null ? from + left : Math.min(from + left, session.endMinute);
    pieces.push({ startMinute: from, endMinute });
    left -= endMinute - from;
  }
  return pieces;
}
