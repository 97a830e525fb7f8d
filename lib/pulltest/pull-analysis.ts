import { type JudgedPull, judgePulls } from '@/lib/pulltest/judge-pulls';
import type { PullQuestion } from '@/lib/pulltest/pull-mode';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { type PullTally, pullTally } from '@/lib/pulltest/pull-tally';
import { type SeriesAnalysis, type SeriesGoal, seriesAnalysis } from '@/lib/pulltest/series-analysis';
import { seriesReadings } from '@/lib/pulltest/series-readings';

/** The analysis of one condition of a series (one wood, glue and wire), as the page shows it. */
export interface PullAnalysis {
  readonly condition: string;
  readonly pulls: readonly JudgedPull[];
  readonly tally: PullTally;
  /** Without what was excluded or pulled early: the answer. */
  readonly answer: SeriesAnalysis;
  /** With all of it, as if nothing spoke against it; null where nothing was left out. */
  readonly withExcluded: SeriesAnalysis | null;
}

/** Every condition of a series analysed by itself, in the order the conditions first come. */
export function pullAnalyses(
  records: readonly PullRecord[],
  question: PullQuestion,
  goal: SeriesGoal,
): readonly PullAnalysis[] {
  const conditions = [...new Set(records.map(({ condition }) => condition))];
  return conditions.map((condition) => {
    const own = records.filter((record) => record.condition === condition);
    const pulls = judgePulls(own, { question });
    const isLeftOut = pulls.some(
      ({ use }) => use.kind === 'out' && (use.reason === 'excluded' || use.reason === 'early'),
    );
    const all = isLeftOut ? judgePulls(own, { question, withExcluded: true }) : null;
    return {
      condition,
      pulls,
      tally: pullTally(pulls),
      answer: seriesAnalysis(seriesReadings(pulls), goal),
      withExcluded: all === null ? null : seriesAnalysis(seriesReadings(all), goal),
    };
  });
}
