import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import type { CalendarDay } from '@/lib/units/zoned-time';
import { addDays, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';

/** The hours of the demo workshop, told from the moment it is loaded and in the wall time of its place. */
export interface DemoTimes {
  readonly nowAt: Instant;
  readonly zone: string;
  readonly today: CalendarDay;
  /** So many days ago, the glue-up began that is still curing: an evening at least three hours past. */
  readonly glueUpDaysAgo: 0 | 1;
  /** When the recoat window closes that is open now. */
  readonly windowClosesAt: Instant;
}

const EVENING = 20 * 60 + 30;
/** Hours at which the open window may close; otherwise it closes five hours from now. */
const CLOSING = [21 * 60, 22 * 60 + 45];
const STEP_MS = 5 * MINUTE_MS;

export function demoTimes(nowAt: Instant, zone: string): DemoTimes {
  const { day: today } = wallTimeAt(nowAt, zone);
  const glueUpDaysAgo = instantOfWallTime(today, EVENING, zone) <= nowAt - 3 * HOUR_MS ? 0 : 1;
  const eveningAt = CLOSING.map((minute) => instantOfWallTime(today, minute, zone)).find(
    (at) => at >= nowAt + 2 * HOUR_MS && at <= nowAt + 12 * HOUR_MS,
  );
  const laterAt = Math.round((nowAt + 5 * HOUR_MS) / STEP_MS) * STEP_MS;
  return { nowAt, zone, today, glueUpDaysAgo, windowClosesAt: eveningAt ?? laterAt };
}

/** The instant at which the workshop's clock showed `HH:MM` so many days ago. */
export function daysAgo(times: DemoTimes, days: number, clock: string): Instant {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return instantOfWallTime(addDays(times.today, -days), hours * 60 + minutes, times.zone);
}

/** The calendar day so many days from now; negative: ago. */
export function dayFromNow(times: DemoTimes, days: number): CalendarDay {
  return addDays(times.today, days);
}
