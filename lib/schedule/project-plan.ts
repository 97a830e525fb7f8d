import type { CompiledProblem } from '@/lib/schedule/compiled-problem';
import { projectOf } from '@/lib/schedule/project';
import { ProjectSearch } from '@/lib/schedule/project-search';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { WindowedProjectSearch } from '@/lib/schedule/windowed-project';

/** The search that a problem which is a plain project is given to; null for a shop with people, hours or due dates. */
export function projectSearchFor(
  compiled: CompiledProblem,
  seed: number,
): ProjectSearch | WindowedProjectSearch | null {
  const project = projectOf(compiled);
  if (project === null) return null;
  return project.into.lag.some((lag) => lag < 0)
    ? new WindowedProjectSearch(project, seed)
    : new ProjectSearch(project, seed);
}

/** The plan in which each task begins so long after now; null where one would end after the horizon. */
export function planOfStarts({ problem }: CompiledProblem, starts: Int32Array): ShopPlan | null {
  const placed = problem.tasks.map((task, i) => {
    const startMinute = problem.nowMinute + (starts[i] ?? 0);
    return {
      taskId: task.id,
      personId: null,
      startMinute,
      finishMinute: startMinute,
      pieces: [],
      setUpMinutes: 0,
      remedyLinkIds: [],
    };
  });
  const isWithin = placed.every(({ finishMinute }) => finishMinute <= problem.horizonMinute);
  return isWithin ? { placed, unplaced: [] } : null;
}
