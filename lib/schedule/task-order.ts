import { type CompiledProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';

/** Times of each task on an empty bench: what rules of priority are made of. */
interface TaskTimes {
  /** Earliest start by links and releases. */
  readonly earliest: Float64Array;
  /** From its start until its batch can be ready, at the least. */
  readonly tail: Float64Array;
  /** Start by which its batch is still in time, or its pinned successor kept. */
  readonly latest: Float64Array;
}

/** How many batches ahead urgency looks. Chosen: the best of five on invented shops. */
const LOOK_AHEADS = [1, 2, 4, 8];
/** What the cures of a batch take on their own before it is due. Chosen: a week. */
const LAST_CURES_MINUTES = 7 * 1440;

/** The tasks with each one after those it waits for, as the problem lists them otherwise. */
export function routeOrder(compiled: CompiledProblem): readonly number[] {
  const order: number[] = [];
  const seen = new Uint8Array(compiled.taskCount);
  const visit = (task: number) => {
    if (seen[task] === 1) return;
    seen[task] = 1;
    for (const from of compiled.before[task] ?? []) visit(from);
    order.push(task);
  };
  for (let i = 0; i < compiled.taskCount; i++) visit(i);
  return order;
}

/**
 * Orders of the open tasks to begin with, by eleven rules: latest start; batch by batch in order of due; slack per
 * minute of attended work left; latest start drawn earlier by weight; earliest start; batch by batch by work per weight,
 * which is best where everything is late anyway; batch by batch by due and work per weight; and batch by batch by
 * urgency, looking ahead less and more.
 */
export function ruleOrders(compiled: CompiledProblem): readonly (readonly number[])[] {
  const route = routeOrder(compiled).filter((task) => compiled.fixed[task] === 0);
  const rank = new Map(route.map((task, i) => [task, i]));
  const { earliest, tail, latest } = taskTimes(compiled);
  const { batches } = compiled.problem;
  const due = batches.map((batch) => batch.dueMinute ?? compiled.problem.horizonMinute);
  const work = new Float64Array(batches.length);
  for (const task of route) {
    const batch = compiled.batchOf[task] ?? 0;
    work[batch] = (work[batch] ?? 0) + (compiled.attended[task] ?? 0);
  }
  const batchOf = (task: number) => compiled.batchOf[task] ?? 0;
  const perWeight = (batch: number) => (work[batch] ?? 0) / Math.max(1e-3, batches[batch]?.weight ?? 1);
  const rules: readonly ((task: number) => number)[] = [
    (task) => latest[task] ?? 0,
    (task) => (due[batchOf(task)] ?? 0) + batchOf(task) * 1e-4,
    (task) => ((latest[task] ?? 0) - (earliest[task] ?? 0)) / (60 + (work[batchOf(task)] ?? 0)),
    (task) => (latest[task] ?? 0) - 1440 * (batches[batchOf(task)]?.weight ?? 0) - 0.2 * (tail[task] ?? 0),
    (task) => earliest[task] ?? 0,
    (task) => perWeight(batchOf(task)) + batchOf(task) * 1e-4,
    (task) => (due[batchOf(task)] ?? 0) + 30 * perWeight(batchOf(task)) + batchOf(task) * 1e-4,
  ];
  const sorted = rules.map((rule) =>
    [...route].sort((a, b) => rule(a) - rule(b) || (rank.get(a) ?? 0) - (rank.get(b) ?? 0)),
  );
  const urgent = LOOK_AHEADS.map((lookAhead) =>
    urgentOrder(compiled, work, lookAhead).flatMap((batch) => route.filter((task) => batchOf(task) === batch)),
  );
  return [...sorted, ...urgent];
}

/**
 * Batches one after the other, each time the one with the most weight per minute of work, less the more slack it has
 * beside `lookAhead` batches' worth of time. Source: apparent tardiness cost, Vepsalainen and Morton 1987 (from memory).
 */
function urgentOrder({ problem }: CompiledProblem, work: Float64Array, lookAhead: number): readonly number[] {
  const { batches, people, nowMinute, horizonMinute } = problem;
  const bench = people
    .flatMap(({ sessions }) => sessions)
    .reduce((sum, { startMinute, endMinute }) => sum + endMinute - startMinute, 0);
  // Minutes of the clock that a minute of work takes, with everybody at it.
  const stretch = (horizonMinute - nowMinute) / Math.max(1, bench);
  const mean = (stretch * work.reduce((sum, minutes) => sum + minutes, 0)) / Math.max(1, batches.length);
  const left = new Set(batches.keys());
  const order: number[] = [];
  let minute = nowMinute;
  while (left.size > 0) {
    let best = -1;
    let highest = Number.NEGATIVE_INFINITY;
    for (const batch of left) {
      const takes = Math.max(1, stretch * (work[batch] ?? 0));
      const due = batches[batch]?.dueMinute ?? horizonMinute;
      const slack = Math.max(0, due - LAST_CURES_MINUTES - minute - takes);
      const urgency = Math.log((batches[batch]?.weight ?? 0) / takes) - slack / (lookAhead * mean + 1);
      if (urgency <= highest && best >= 0) continue;
      best = batch;
      highest = urgency;
    }
    left.delete(best);
    order.push(best);
    minute += stretch * (work[best] ?? 0);
  }
  return order;
}

/** Forward and backward over the links, with each lag as long as it is when counted from the earliest moment. */
export function taskTimes(compiled: CompiledProblem): TaskTimes {
  const { problem, taskCount } = compiled;
  const route = routeOrder(compiled);
  const earliest = Float64Array.from(compiled.release);
  const tail = new Float64Array(taskCount);
  const latest = new Float64Array(taskCount);
  const length = (task: number) => compiled.attended[task] ?? 0;
  for (const task of route) {
    const { state } = problem.tasks[task] ?? { state: { kind: 'open' as const } };
    if (state.kind !== 'open') earliest[task] = state.startMinute;
    for (const link of compiled.linksOut[task] ?? []) {
      if (!link.isLeast) continue;
      const opens = opensAt(link.lag, (earliest[task] ?? 0) + (link.fromFinish ? length(task) : 0));
      const start = opens - (link.toFinish ? length(link.to) : 0);
      if (opens < NEVER && start > (earliest[link.to] ?? 0)) earliest[link.to] = start;
    }
  }
  for (const task of [...route].reverse()) {
    const begin = earliest[task] ?? 0;
    const ready = compiled.readyAfter[task];
    const own = ready === undefined ? NEVER : opensAt(ready, begin + length(task));
    let longest = own >= NEVER ? length(task) : own - begin;
    let latestStart = (problem.batches[compiled.batchOf[task] ?? 0]?.dueMinute ?? problem.horizonMinute) - longest;
    for (const link of compiled.linksOut[task] ?? []) {
      if (!link.isLeast) continue;
      const from = begin + (link.fromFinish ? length(task) : 0);
      const opens = opensAt(link.lag, from);
      if (opens >= NEVER) continue;
      const lead = opens - begin - (link.toFinish ? length(link.to) : 0);
      longest = Math.max(longest, lead + (tail[link.to] ?? 0));
      const { state } = problem.tasks[link.to] ?? { state: { kind: 'open' as const } };
      const wanted = state.kind === 'pinned' ? state.startMinute : (latest[link.to] ?? NEVER);
      latestStart = Math.min(latestStart, wanted - lead);
    }
    tail[task] = longest;
    latest[task] = latestStart;
  }
  return { earliest, tail, latest };
}
