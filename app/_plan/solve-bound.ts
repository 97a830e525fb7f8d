import loadHighs from 'highs';
import { finishProgramme, provenMinutes } from '@/lib/schedule/finish-bound';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';

/** Longest the solver may take, in seconds. Chosen: the plan itself is there already. */
const WITHIN_SECONDS = 4;

/**
 * Weighted minutes late that are proved unavoidable by what the bench and the resources allow until each session, for
 * plans that place every task; null where it proves nothing. Blocks its thread while it solves.
 */
export async function solveBound(problem: PlanningProblem, lastMinute: number): Promise<number | null> {
  const programme = finishProgramme(problem, lastMinute);
  if (programme === null) return null;
  const highs = await loadHighs();
  return highs.withModel({ format: 'lp', data: programme }, (model) => {
    model.options.set('output_flag', false);
    model.options.set('time_limit', WITHIN_SECONDS);
    model.run();
    // What is proved so far also where the time was over first.
    const proved = Number(model.info.get('mip_dual_bound'));
    return Number.isFinite(proved) ? provenMinutes(proved) : null;
  });
}
