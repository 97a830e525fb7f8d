import { dateText } from '@/lib/units/format-instant';

/** A calendar day `2026-03-12` as `Thu 12 Mar 2026`. */
export function dayText(day: string): string {
  return dateText(Date.parse(`${day}T12:00:00Z`), 'UTC');
}
