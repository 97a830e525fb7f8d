import { checkPlan } from '@/lib/schedule/check-plan';
import type { CompiledProblem } from '@/lib/schedule/compiled-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';

/**
 * The open tasks, by index, that cannot stay where a plan has them: those that it does not place, those that clash as
 * things stand now, and all that wait for one of these. Of a link that is not kept it is the later task alone.
 */
export function affectedTasks(compiled: CompiledProblem, held: ShopPlan): Set<number> {
  const { problem } = compiled;
  const index = new Map(problem.tasks.map((task, i) => [task.id, i]));
  const placed = new Set(held.placed.map(({ taskId }) => taskId));
  const affected = new Set<number>();
  const visit = (task: number | undefined) => {
    if (task !== undefined) addWithFollowers(compiled, affected, task);
  };
  for (const task of problem.tasks) if (!placed.has(task.id)) visit(index.get(task.id));
  for (const violation of checkPlan(problem, held)) {
    const isLink = violation.kind === 'least-lag' || violation.kind === 'greatest-lag';
    for (const id of isLink ? violation.taskIds.slice(-1) : violation.taskIds) visit(index.get(id));
  }
  return affected;
}

/** Adds a task and all that wait for it, but for what is fixed. */
export function addWithFollowers(compiled: CompiledProblem, affected: Set<number>, task: number): void {
  if (affected.has(task) || compiled.fixed[task] === 1) return;
  affected.add(task);
  for (const link of compiled.linksOut[task] ?? []) addWithFollowers(compiled, affected, link.to);
}
