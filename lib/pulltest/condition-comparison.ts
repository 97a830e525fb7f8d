import { type JudgedPull, judgePulls } from '@/lib/pulltest/judge-pulls';
import type { PullQuestion } from '@/lib/pulltest/pull-mode';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { seriesReadings } from '@/lib/pulltest/series-readings';
import { isConnected } from '@/lib/statistics/connected-table';
import { studentTwoSided, studentUpperQuantile } from '@/lib/statistics/student-t';
import { centre, sumOfSquares } from '@/lib/statistics/summary';
import { contrastVariance, twoWayFit } from '@/lib/statistics/two-way-fit';

/** How one condition (a wood, a glue, a wire) holds against another at the same depths. */
export type ConditionComparison =
  | {
      readonly ok: true;
      readonly condition: string;
      readonly against: string;
      /** Loads of the first over those of the second. */
      readonly ratio: number;
      /** 95 % confidence interval of the ratio. */
      readonly from: number;
      readonly to: number;
      /** Two-sided, for this comparison alone. */
      readonly p: number;
      /** `within`: the two shared mixes. `between`: each had mixes of its own, so that mixes are what is compared. */
      readonly basis: 'within' | 'between';
    }
  | {
      readonly ok: false;
      readonly condition: string;
      readonly against: string;
      readonly code: 'no-common-depth' | 'has-bounds' | 'too-few-readings' | 'no-scatter';
    };

/** The first condition against each of the others. Fewer than two conditions compare to nothing. */
export function conditionComparisons(records: readonly PullRecord[], question: PullQuestion): ConditionComparison[] {
  const pulls = judgePulls(records, { question });
  const [first, ...others] = [...new Set(records.map(({ condition }) => condition))];
  if (first === undefined) return [];
  return others.map((other) => compared(pulls, other, first));
}

function compared(pulls: readonly JudgedPull[], condition: string, against: string): ConditionComparison {
  const both = seriesReadings(pulls.filter(({ record }) => [condition, against].includes(record.condition)));
  const refusal = (code: 'no-common-depth' | 'has-bounds' | 'too-few-readings' | 'no-scatter') => {
    return { ok: false as const, condition, against, code };
  };
  const sides = [condition, against].map((side) => both.readings.filter(({ record }) => record.condition === side));
  const common = both.depthsMm.flatMap((_, level) => {
    return sides.every((side) => side.some((reading) => reading.level === level)) ? [level] : [];
  });
  if (common.length === 0) return refusal('no-common-depth');
  const readings = both.readings.filter(({ level }) => common.includes(level));
  if (readings.some(({ isLowerBound }) => isLowerBound)) return refusal('has-bounds');
  const cells = readings.map(({ record, level, mix, y }) => ({
    side: record.condition === condition ? 0 : 1,
    depth: common.indexOf(level),
    mix,
    y,
  }));
  const shared = withinMixes(cells, common.length) ?? betweenMixes(cells);
  if (shared === null) return refusal('too-few-readings');
  const { difference, standardError, freedom, basis } = shared;
  if (!(standardError > 1e-12)) return refusal('no-scatter');
  const reach = studentUpperQuantile(0.025, freedom) * standardError;
  return {
    ok: true,
    condition,
    against,
    ratio: Math.exp(difference),
    from: Math.exp(difference - reach),
    to: Math.exp(difference + reach),
    p: studentTwoSided(difference / standardError, freedom),
    basis,
  };
}

interface Cell {
  readonly side: number;
  readonly depth: number;
  readonly mix: number;
  readonly y: number;
}

interface Difference {
  readonly difference: number;
  readonly standardError: number;
  readonly freedom: number;
  readonly basis: 'within' | 'between';
}

/** Mean difference over the depths, mixes taken out; null where the two shared no mixes or no freedom is left. */
function withinMixes(cells: readonly Cell[], depths: number): Difference | null {
  const mixes = new Map([...new Set(cells.map(({ mix }) => mix))].map((mix, index) => [mix, index]));
  const table = cells.map(({ side, depth, mix, y }) => ({
    treatment: side * depths + depth,
    block: mixes.get(mix) ?? 0,
    y,
  }));
  if (!isConnected(table, 2 * depths, mixes.size)) return null;
  const fit = twoWayFit(table);
  if (!fit.ok || fit.freedom < 1) return null;
  const weights = new Map(Array.from({ length: 2 * depths }, (_, i) => [i, (i < depths ? 1 : -1) / depths]));
  const difference = [...weights].reduce((sum, [i, weight]) => sum + weight * (fit.treatmentEffects[i] ?? 0), 0);
  const variance = (fit.rss / fit.freedom) * contrastVariance(fit.design, weights, new Map());
  return { difference, standardError: Math.sqrt(variance), freedom: fit.freedom, basis: 'within' };
}

/** Means of mixes against means of mixes, each reading less the mean of its depth; null with fewer than 2 on a side. */
function betweenMixes(cells: readonly Cell[]): Difference | null {
  const depthMean = new Map(
    [...new Set(cells.map(({ depth }) => depth))].map((depth) => {
      const sides = [0, 1].map((side) =>
        centre(cells.filter((c) => c.depth === depth && c.side === side).map(({ y }) => y)),
      );
      return [depth, centre(sides)];
    }),
  );
  const means = [0, 1].map((side) => {
    const own = cells.filter((cell) => cell.side === side);
    return [...new Set(own.map(({ mix }) => mix))].map((mix) =>
      centre(own.filter((cell) => cell.mix === mix).map(({ y, depth }) => y - (depthMean.get(depth) ?? 0))),
    );
  });
  const [one = [], two = []] = means;
  if (one.length < 2 || two.length < 2) return null;
  const freedom = one.length + two.length - 2;
  const variance = ((sumOfSquares(one) + sumOfSquares(two)) / freedom) * (1 / one.length + 1 / two.length);
  return { difference: centre(one) - centre(two), standardError: Math.sqrt(variance), freedom, basis: 'between' };
}
