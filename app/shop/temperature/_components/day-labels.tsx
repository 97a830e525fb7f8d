import { dayText } from '@/app/_ui/day-text';
import type { Instant } from '@/lib/units/instant';
import type { PlotDay } from './plot-days';

export interface DayLabelsProps {
  readonly days: readonly PlotDay[];
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

const MOST_SHARE = 0.96;
const MOST_SHARE_ON_PHONE = 0.88;

/** Names of the days under a plot; on a phone every third. */
export function DayLabels({ days, fromAt, toAt }: DayLabelsProps) {
  return (
    <div aria-hidden="true" className="relative ml-10 h-10 text-xs text-ink-soft">
      {days.slice(1).map((day, index) => {
        const share = (day.startAt - fromAt) / (toAt - fromAt);
        // The name of a day that has hardly begun would stand outside.
        if (share > MOST_SHARE) return null;
        const isOnPhone = index % 3 === 0 && share < MOST_SHARE_ON_PHONE;
        const [weekday, number, month] = dayText(day.day).split(' ');
        return (
          <span
            key={day.day}
            className={`absolute top-0 leading-tight whitespace-nowrap ${isOnPhone ? '' : 'max-md:hidden'}`}
            style={{ left: `${share * 100}%` }}
          >
            {weekday}
            <br />
            {number} {month}
          </span>
        );
      })}
    </div>
  );
}
