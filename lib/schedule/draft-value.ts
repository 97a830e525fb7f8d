import { closesAt, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { PLACED, type PlanDraft } from '@/lib/schedule/plan-draft';

/** Levels of a plan's value as numbers, in the order of VALUE_LEVELS. */
export const LEVEL_COUNT = 6;

/** Writes what a finished draft costs into `value`, level by level as `planValue` counts it from the plan. */
export function weighDraft(draft: PlanDraft, batchReady: Float64Array, value: Float64Array): void {
  const { compiled, status, remedyCount, setUp, book } = draft;
  const { horizonMinute, batches, tasks } = compiled.problem;
  value.fill(0);
  batchReady.fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i < compiled.taskCount; i++) {
    const batch = compiled.batchOf[i] ?? 0;
    let ready = horizonMinute;
    if (status[i] === PLACED) {
      const lag = compiled.readyAfter[i];
      const own = lag === undefined ? NEVER : opensAt(lag, draft.finish[i] ?? 0);
      if (own < NEVER) ready = own;
      const isFixed = compiled.fixed[i] === 1;
      if (!isFixed || tasks[i]?.state.kind === 'pinned') {
        value[2] = (value[2] ?? 0) + (remedyCount[i] ?? 0);
        if ((setUp[i] ?? 0) > 0) value[4] = (value[4] ?? 0) + 1;
      }
      if (isFixed) value[0] = (value[0] ?? 0) + brokenInto(draft, i);
    } else {
      value[0] = (value[0] ?? 0) + 1;
    }
    if (ready > (batchReady[batch] ?? 0)) batchReady[batch] = ready;
  }
  for (let b = 0; b < batches.length; b++) {
    const ready = batchReady[b] ?? 0;
    const due = batches[b]?.dueMinute ?? null;
    if (due !== null && ready > due) value[1] = (value[1] ?? 0) + (ready - due) * (batches[b]?.weight ?? 0);
    if (ready > (value[5] ?? 0)) value[5] = ready;
  }
  for (let s = 0; s < book.sessionCount; s++) value[3] = (value[3] ?? 0) + (book.used[s] ?? 0);
}

/** How many links into a pinned task are not kept. */
function brokenInto(draft: PlanDraft, task: number): number {
  if (draft.compiled.problem.tasks[task]?.state.kind !== 'pinned') return 0;
  let broken = 0;
  for (const link of draft.compiled.linksIn[task] ?? []) {
    if (!draft.isPlaced(link.from)) continue;
    const from = draft.fromMoment(link);
    const to = draft.toMoment(link);
    if (link.isLeast ? to < opensAt(link.lag, from) : to > closesAt(link.lag, from)) broken++;
  }
  return broken;
}
