import { type FTest, fTest } from '@/lib/statistics/one-way-anova';
import { sumOfSquares } from '@/lib/statistics/summary';
import type { TableReading, TwoWayFit } from '@/lib/statistics/two-way-fit';

/** One factor's line in the table. */
export interface FactorLine {
  /** What the model loses without this factor, the other one kept ("adjusted"). */
  readonly squares: number;
  readonly freedom: number;
  /** Null where there is no error to test against. */
  readonly test: FTest | null;
}

export interface TwoWayAnova {
  readonly treatment: FactorLine;
  readonly block: FactorLine;
  readonly errorSquares: number;
  readonly errorFreedom: number;
  /** Null where no freedom is left for the error. */
  readonly errorMean: number | null;
}

/**
 * Analysis of variance of a table without interaction, complete or with missing cells. Missing cells are never filled
 * in: that would bias the ratios upward.
 * Source: F. Yates (1934) for the least-squares analysis, from memory; examples with sources in tests/outside.
 */
export function twoWayAnova(readings: readonly TableReading[], fit: TwoWayFit): TwoWayAnova {
  const blocksOnly = squaresWithin(readings, (reading) => reading.block);
  const treatmentsOnly = squaresWithin(readings, (reading) => reading.treatment);
  const line = (without: number, freedom: number): FactorLine => {
    const squares = Math.max(0, without - fit.rss);
    return { squares, freedom, test: fTest(squares, freedom, fit.rss, fit.freedom) };
  };
  return {
    treatment: line(blocksOnly, fit.treatments - 1),
    block: line(treatmentsOnly, fit.blocks - 1),
    errorSquares: fit.rss,
    errorFreedom: fit.freedom,
    errorMean: fit.freedom > 0 ? fit.rss / fit.freedom : null,
  };
}

/** Sum of squares within the levels of one factor. */
export function squaresWithin(readings: readonly TableReading[], level: (reading: TableReading) => number): number {
  const groups = new Map<number, number[]>();
  for (const reading of readings) {
    const group = groups.get(level(reading));
    if (group === undefined) groups.set(level(reading), [reading.y]);
    else group.push(reading.y);
  }
  return [...groups.values()].reduce((sum, group) => sum + sumOfSquares(group), 0);
}
