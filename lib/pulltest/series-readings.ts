import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import type { PullRecord } from '@/lib/pulltest/pull-record';

/** A pull that counts, numbered by depth and by mix. */
export interface SeriesReading {
  readonly record: PullRecord;
  readonly level: number;
  readonly mix: number;
  /** ln of the depth in mm. */
  readonly x: number;
  /** ln of the load in N. */
  readonly y: number;
  readonly isLowerBound: boolean;
}

export interface SeriesReadings {
  readonly readings: readonly SeriesReading[];
  /** Tested depths, mm, rising. */
  readonly depthsMm: readonly number[];
  /** Ids of the mixes, in the order they first come. */
  readonly mixIds: readonly string[];
  /** Joints that came out by hand. */
  readonly fellOut: number;
}

/** Depths nearer than this are the same depth. Chosen: a tenth of what a drill stop can be set to. */
const SAME_DEPTH_MM = 0.05;

/** The readings of a series in the form the statistics take. */
export function seriesReadings(pulls: readonly JudgedPull[]): SeriesReadings {
  const counted = pulls.flatMap(({ record, use }) =>
    use.kind === 'exact' || use.kind === 'at-least'
      ? [{ record, loadN: use.loadN, isBound: use.kind === 'at-least' }]
      : [],
  );
  const depthsMm: number[] = [];
  for (const depth of counted.map(({ record }) => record.embedmentMm).sort((a, b) => a - b)) {
    if (depth - (depthsMm.at(-1) ?? Number.NEGATIVE_INFINITY) > SAME_DEPTH_MM) depthsMm.push(depth);
  }
  const mixIds = [...new Set(counted.map(({ record }) => record.mixId))];
  const mixOf = new Map(mixIds.map((id, index) => [id, index]));
  const readings = counted.map(({ record, loadN, isBound }): SeriesReading => {
    const level = depthsMm.findLastIndex((depth) => depth <= record.embedmentMm);
    return {
      record,
      level,
      mix: mixOf.get(record.mixId) ?? 0,
      x: Math.log(depthsMm[level] ?? record.embedmentMm),
      y: Math.log(loadN),
      isLowerBound: isBound,
    };
  });
  return { readings, depthsMm, mixIds, fellOut: pulls.filter(({ use }) => use.kind === 'fell-out').length };
}

/** The same readings without some of them, numbered anew. */
export function readingsWithout(series: SeriesReadings, leaveOut: (reading: SeriesReading) => boolean): SeriesReadings {
  const kept = series.readings.filter((reading) => !leaveOut(reading));
  const levels = [...new Set(kept.map(({ level }) => level))].sort((a, b) => a - b);
  const mixes = [...new Set(kept.map(({ mix }) => mix))];
  const levelOf = new Map(levels.map((level, index) => [level, index]));
  const mixOf = new Map(mixes.map((mix, index) => [mix, index]));
  return {
    readings: kept.map((reading) => ({
      ...reading,
      level: levelOf.get(reading.level) ?? 0,
      mix: mixOf.get(reading.mix) ?? 0,
    })),
    depthsMm: levels.flatMap((level) => series.depthsMm[level] ?? []),
    mixIds: mixes.flatMap((mix) => series.mixIds[mix] ?? []),
    fellOut: series.fellOut,
  };
}
