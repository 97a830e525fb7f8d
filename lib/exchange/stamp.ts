import { isSpace } from './decimal';
import { readClock } from './read-clock';
import { readDate } from './read-date';
import { COMMA, type StampParts, trimmedEnd } from './stamp-parts';

/**
 * Reads text[from, to) as a date with or without a time of day; false when it is anything else.
 *
 * Taken: ISO 8601 with `T` or a space, basic or extended, with fractions of a second, `Z` or an offset; day, month and
 * year with slashes, hyphens or dots; two-digit years (70 to 99 are 19xx); names of months; 12-hour clocks.
 * Numbers are checked for their range, the day against its month only in `wallTime`, which knows the order.
 * Source: ISO 8601-1:2019 and RFC 3339 from memory; the other forms as loggers were seen to write them.
 */
export function readStamp(text: string, from: number, to: number, into: StampParts): boolean {
  const end = trimmedEnd(text, from, to);
  into.clockMs = 0;
  into.hasClock = false;
  into.isTwelveHour = false;
  into.offsetMinutes = Number.NaN;
  let at = readDate(text, from, end, into);
  if (at === -1) return false;
  if (at === end) return true;
  const code = text.charCodeAt(at);
  if (code === COMMA || code === LETTER_T || code === LETTER_T_SMALL) at += 1;
  else if (!isSpace(code)) return false;
  return readClock(text, at, end, into);
}

/** Reads text[from, to) as a time of day alone; false when it is anything else. */
export function readTimeOfDay(text: string, from: number, to: number, into: StampParts): boolean {
  into.isTwelveHour = false;
  into.offsetMinutes = Number.NaN;
  return readClock(text, from, trimmedEnd(text, from, to), into);
}

const LETTER_T = 84;
const LETTER_T_SMALL = 116;
