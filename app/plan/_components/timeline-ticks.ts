import { clockText, dateText } from '@/lib/units/format-instant';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { addDays, instantOfWallTime, wallTimeAt, weekdayOf } from '@/lib/units/zoned-time';
import type { Drawn } from './timeline-scale';

/** A mark of the wall clock. */
export interface Tick {
  readonly at: Instant;
  /** Days, or weeks where days are too close together to be named. */
  readonly isStrong: boolean;
  /** What is written at it; null: a line alone. */
  readonly text: string | null;
}

/** Room that a text needs, px. */
const TEXT_PX = 58;
/** Days closer together than this are not drawn, px. */
const DAY_PX = 8;
const HOUR_STEPS = [1, 2, 3, 6, 12] as const;

/**
 * Marks for a stretch of time at a scale: hours where there is room for their names, else days, else weeks by their
 * Mondays. The same instants are marked however the stretch is cut. Right over clock changes: each is looked up.
 */
export function timelineTicks({ fromAt, toAt }: Drawn, pxPerMs: number, zone: string): readonly Tick[] {
  const hourPx = pxPerMs * HOUR_MS;
  const step = HOUR_STEPS.find((hours) => hours * hourPx >= TEXT_PX) ?? 24;
  const areDaysNamed = 24 * hourPx >= TEXT_PX;
  const weeks = Math.max(1, Math.ceil(TEXT_PX / (7 * 24 * hourPx)));
  const ticks: Tick[] = [];
  const { day: lastDay } = wallTimeAt(toAt, zone);
  for (let { day } = wallTimeAt(fromAt, zone); day <= lastDay; day = addDays(day, 1)) {
    const isMonday = weekdayOf(day) === 1;
    if (24 * hourPx < DAY_PX && !isMonday) continue;
    const midnightAt = instantOfWallTime(day, 0, zone);
    const isNamed = areDaysNamed || (isMonday && weekNumber(midnightAt) % weeks === 0);
    // `Thu 12 Mar`, and `12 Mar` for a week.
    const text = dateText(midnightAt, zone).slice(areDaysNamed ? 0 : 4, -5);
    ticks.push({ at: midnightAt, isStrong: areDaysNamed || isMonday, text: isNamed ? text : null });
    for (let hour = step; hour < 24; hour += step) {
      const at = instantOfWallTime(day, hour * 60, zone);
      ticks.push({ at, isStrong: false, text: clockText(at, zone).slice(0, 5) });
    }
  }
  return ticks;
}

/** Weeks since a Monday long ago: every other one is the same whatever is in view. */
function weekNumber(at: Instant): number {
  return Math.round(at / (7 * 24 * HOUR_MS));
}
