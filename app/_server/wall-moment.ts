import 'server-only';
import type { WallMoment } from '@/lib/contracts/pull-forms';
import { minuteText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';

/** The instant of a wall time in the shop's zone; null for none. */
export function instantOfMoment(moment: WallMoment | null, zone: string): Instant | null {
  return moment === null ? null : instantOfWallTime(moment.day, moment.minuteOfDay, zone);
}

/** An instant as a browser's field for day and time takes it. */
export function momentInput(at: Instant | null, zone: string): string {
  if (at === null) return '';
  const { day, minuteOfDay } = wallTimeAt(at, zone);
  return `${day}T${minuteText(minuteOfDay)}`;
}
