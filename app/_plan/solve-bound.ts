import loadHighs from 'highs';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { provenMinutes, sessionProgramme } from '@/lib/schedule/session-bound';

/** Longest the solver may take, in seconds. Chosen: the plan itself is there already. */
const WITHIN_SECONDS = 4;

/**
 * Weighted minutes late that are proved unavoidable over the sessions of the bench, for plans that place every task;
 * null where it proves nothing or takes too long. Blocks its thread while it solves.
 */
export async function solveBound(problem: PlanningProblem, lastMinute: number): Promise<number | null> {
  const programme = sessionProgramme(problem, lastMinute);
  if (programme === null) return null;
  const highs = await loadHighs();
  const { Status, ObjectiveValue } = highs.solve(programme, { time_limit: WITHIN_SECONDS, output_flag: false });
  return Status === 'Optimal' ? provenMinutes(ObjectiveValue) : null;
}
