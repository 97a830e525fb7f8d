import type { Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';

/** A task beside its place in the plan. */
export interface TaskPlace {
  readonly task: Task;
  readonly place: PlannedTask;
}
