import { isSpace } from './decimal';

/** Earliest and latest year a reading may have. Chosen: no logger is older, and no plan goes further. */
export const FIRST_YEAR = 1970;
export const LAST_YEAR = 2099;

/** How the date of a stamp is written; `slash` alone leaves open which number is the day. */
export type DateStyle = 'year-first' | 'named-month' | 'dots' | 'slash';

/**
 * What one written time says, before anybody decides what is day and what is month. One object serves all rows of a
 * file. `offsetMinutes` is NaN where the stamp names no zone.
 */
export class StampParts {
  style: DateStyle = 'year-first';
  year = 0;
  /** Month, or the first of the two open numbers. */
  month = 0;
  /** Day, or the second of the two open numbers. */
  day = 0;
  /** Milliseconds since midnight. */
  clockMs = 0;
  hasClock = false;
  isTwelveHour = false;
  offsetMinutes = Number.NaN;
  /** The number read last and how many digits it had: scratch of the functions below. */
  number = 0;
  digits = 0;
}

/** Character codes of the marks in dates and times. */
export const COMMA = 44;
export const HYPHEN = 45;
export const POINT = 46;
export const SLASH = 47;
export const COLON = 58;

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

export function isLetter(code: number): boolean {
  return (code >= 65 && code <= 90) || (code >= 97 && code <= 122) || code >= 0xc0;
}

export function trimmedEnd(text: string, from: number, to: number): number {
  let end = to;
  while (end > from && isSpace(text.charCodeAt(end - 1))) end -= 1;
  return end;
}

export function skipSpaces(text: string, at: number, to: number): number {
  let next = at;
  while (next < to && isSpace(text.charCodeAt(next))) next += 1;
  return next;
}

/** Reads digits from `at` on, at most 14, into `into.number`, and gives the place behind them. */
export function readDigits(text: string, at: number, to: number, into: StampParts): number {
  let value = 0;
  let next = at;
  while (next < to && next - at < 14) {
    const code = text.charCodeAt(next);
    if (!isDigit(code)) break;
    value = value * 10 + (code - 48);
    next += 1;
  }
  into.number = value;
  into.digits = next - at;
  return next;
}

/** Sets the time of day; false when there is none like it. */
export function setClock(into: StampParts, hour: number, minute: number, second: number, fractionMs: number): boolean {
  into.hasClock = true;
  into.clockMs = ((hour * 60 + minute) * 60 + second) * 1000 + fractionMs;
  // 24:00 is the end of the day, and second 60 a leap second: both are instants of the next minute.
  return minute < 60 && second <= 60 && (hour < 24 || into.clockMs === 86_400_000);
}
