import { minuteText } from '@/lib/units/format-instant';

const DAY_NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** A stretch that holds on several days of the week. */
export interface DaysStretch {
  readonly weekdays: readonly number[];
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** Puts stretches of the same hours together, in the order of their first day. */
export function groupedByHours(
  stretches: readonly { readonly weekday: number; readonly fromMinute: number; readonly toMinute: number }[],
): DaysStretch[] {
  const groups = new Map<string, { weekdays: number[]; fromMinute: number; toMinute: number }>();
  for (const { weekday, fromMinute, toMinute } of stretches) {
    const key = `${fromMinute} ${toMinute}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { weekdays: [weekday], fromMinute, toMinute });
    else group.weekdays.push(weekday);
  }
  return [...groups.values()];
}

/** `Mon to Fri 18:00–22:00, Sat 9:00–13:00`. */
export function hoursText(stretches: readonly DaysStretch[]): string {
  return stretches
    .map(({ weekdays, fromMinute, toMinute }) => `${daysText(weekdays)} ${spanText(fromMinute, toMinute)}`)
    .join(', ');
}

/** `18:00–22:00`. */
export function spanText(fromMinute: number, toMinute: number): string {
  return `${minuteText(fromMinute)}–${minuteText(toMinute)}`;
}

/** `Mon to Fri`, `Mon, Wed`, `every day`. */
export function daysText(weekdays: readonly number[]): string {
  const days = weekdays.toSorted((a, b) => a - b);
  const first = days[0] ?? 1;
  const last = days.at(-1) ?? 1;
  if (days.length === 7) return 'every day';
  if (days.length > 2 && last - first === days.length - 1) return `${dayName(first)} to ${dayName(last)}`;
  return days.map(dayName).join(', ');
}

function dayName(weekday: number): string {
  return DAY_NAMES[weekday - 1] ?? '';
}
