import type { SeriesReadings } from '@/lib/pulltest/series-readings';
import { isConnected } from '@/lib/statistics/connected-table';
import { largestResidualCritical, studentisedResiduals } from '@/lib/statistics/studentised-residuals';
import { type TableReading, twoWayFit } from '@/lib/statistics/two-way-fit';

/** A reading further from what depth and mix let expect than one series in twenty would show. */
export interface OutlierFlag {
  readonly pullId: string;
  /** Distance in standard errors. */
  readonly residual: number;
  /** The load over what the other readings of its depth and mix let expect, less 1. */
  readonly difference: number;
}

export type OutlierCheck =
  | {
      readonly ok: true;
      readonly flags: readonly OutlierFlag[];
      readonly critical: number;
      /** Exact readings that were compared. */
      readonly compared: number;
    }
  /** Too few readings to tell an outlier from its own row and column. */
  | { readonly ok: false };

/**
 * Outliers among the exact readings, by the largest externally studentised residual of depth and mix on logarithms. A
 * flag is a question, not a verdict: the reading stays in. Lower bounds are not judged.
 */
export function outlierFlags(series: SeriesReadings): OutlierCheck {
  const exact = series.readings.filter(({ isLowerBound }) => !isLowerBound);
  const table = renumbered(exact.map(({ level, mix, y }) => ({ treatment: level, block: mix, y })));
  const treatments = new Set(table.map(({ treatment }) => treatment)).size;
  const blocks = new Set(table.map(({ block }) => block)).size;
  if (table.length === 0 || !isConnected(table, treatments, blocks)) return { ok: false };
  const fit = twoWayFit(table);
  if (!fit.ok || fit.rss === 0) return { ok: false };
  const critical = largestResidualCritical(table.length, fit.freedom);
  if (critical === null) return { ok: false };
  const flags = studentisedResiduals(table, fit).flatMap((residual, i): OutlierFlag[] => {
    const reading = exact[i];
    if (residual === null || reading === undefined || Math.abs(residual.t) <= critical) return [];
    return [{ pullId: reading.record.id, residual: residual.t, difference: Math.expm1(residual.difference) }];
  });
  return { ok: true, flags, critical, compared: table.length };
}

/** Treatments and blocks numbered from 0 without holes. */
function renumbered(table: readonly TableReading[]): TableReading[] {
  const treatments = new Map([...new Set(table.map(({ treatment }) => treatment))].map((old, index) => [old, index]));
  const blocks = new Map([...new Set(table.map(({ block }) => block))].map((old, index) => [old, index]));
  return table.map(({ treatment, block, y }) => ({
    treatment: treatments.get(treatment) ?? 0,
    block: blocks.get(block) ?? 0,
    y,
  }));
}
