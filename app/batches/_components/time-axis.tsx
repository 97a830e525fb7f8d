import { clockText, weekdayClockText } from '@/lib/units/format-instant';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { addDays, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';
import type { Place, TimeRange } from './timeline-range';

export interface TimeAxisProps {
  readonly range: TimeRange;
  readonly place: Place;
  readonly zone: string;
  readonly height: number;
}

/** Marks of the shop's wall time: full hours or midnights, as many as there is room for. */
export function TimeAxis({ range, place, zone, height }: TimeAxisProps) {
  const ticks = wallTicks(range, zone);
  const everyOther = ticks.length > 4;
  return (
    <g>
      {ticks.map(({ at, isDay }, index) => (
        <g key={at}>
          <line
            x1={`${place(at)}%`}
            x2={`${place(at)}%`}
            y1="18"
            y2={height}
            className={isDay ? 'stroke-line-strong' : 'stroke-line'}
          />
          {place(at) > 2 && place(at) < 94 && (
            <text
              x={`${place(at)}%`}
              y="12"
              textAnchor="middle"
              className={`fill-ink-soft text-xs ${everyOther && index % 2 === 1 ? 'max-sm:hidden' : ''}`}
            >
              {isDay ? weekdayClockText(at, zone).split(' ')[0] : clockText(at, zone)}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** Steps between marks, in hours; from 24 on a mark is a midnight. */
const STEPS = [1, 2, 3, 6, 12, 24, 48, 96, 168] as const;
const MOST_TICKS = 8;

/** Midnights and, within short ranges, hours of the wall clock; right over clock changes, for each is looked up. */
export function wallTicks(
  { fromAt, toAt }: TimeRange,
  zone: string,
): { readonly at: Instant; readonly isDay: boolean }[] {
  const hours = (toAt - fromAt) / HOUR_MS;
  const step = STEPS.find((candidate) => hours / candidate <= MOST_TICKS) ?? Math.ceil(hours / MOST_TICKS / 24) * 24;
  const dayStep = Math.max(1, Math.round(step / 24));
  const ticks: { at: Instant; isDay: boolean }[] = [];
  const lastDay = wallTimeAt(toAt, zone).day;
  for (let day = wallTimeAt(fromAt, zone).day; day <= lastDay; day = addDays(day, dayStep)) {
    for (let hour = 0; hour < 24; hour += Math.min(step, 24)) {
      const at = instantOfWallTime(day, hour * 60, zone);
      if (at >= fromAt && at <= toAt) ticks.push({ at, isDay: hour === 0 });
    }
  }
  return ticks;
}
