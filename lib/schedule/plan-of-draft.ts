import { PLACED, type PlanDraft, UNPLACED } from '@/lib/schedule/plan-draft';
import type { PlannedTask, ShopPlan, UnplacedTask } from '@/lib/schedule/shop-plan';
import { whyUnplaced } from '@/lib/schedule/why-unplaced';

/** A finished draft as data, with the reasons for what has no place. `earliest`: the first start that links allow. */
export function planOfDraft(draft: PlanDraft, earliest: (task: number) => number): ShopPlan {
  const placed: PlannedTask[] = [];
  const unplaced: UnplacedTask[] = [];
  for (const [i, task] of draft.compiled.problem.tasks.entries()) {
    if (draft.status[i] === PLACED) placed.push(plannedTask(draft, i, task.id));
    else unplaced.push({ taskId: task.id, reason: reasonFor(draft, i, earliest) });
  }
  return { placed, unplaced };
}

function plannedTask(draft: PlanDraft, i: number, taskId: string): PlannedTask {
  const { problem } = draft.compiled;
  const pieces = draft.pieces[i] ?? [];
  const spans = pieces.flatMap((startMinute, k) =>
    k % 2 === 0 ? [{ startMinute, endMinute: pieces[k + 1] ?? startMinute }] : [],
  );
  return {
    taskId,
    personId: problem.people[draft.person[i] ?? -1]?.id ?? null,
    startMinute: draft.start[i] ?? 0,
    finishMinute: draft.finish[i] ?? 0,
    pieces: spans,
    setUpMinutes: draft.setUp[i] ?? 0,
    remedyLinkIds: (draft.remedies[i] ?? []).map((link) => problem.links[link]?.id ?? ''),
  };
}

function reasonFor(draft: PlanDraft, task: number, earliest: (task: number) => number): UnplacedTask['reason'] {
  const { compiled } = draft;
  const waitsFor = compiled.before[task]?.find((from) => draft.status[from] === UNPLACED);
  const reason = waitsFor === undefined ? null : compiled.problem.tasks[waitsFor];
  if (reason) return { kind: 'waits-for-unplaced', taskId: reason.id };
  return whyUnplaced(compiled, task, earliest(task), draft.start, (from) => draft.isPlaced(from), draft.finish);
}
