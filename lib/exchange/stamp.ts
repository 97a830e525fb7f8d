import { isSpace } from './decimal';
import { monthOfName } from './month-names';

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

const COMMA = 44;
const HYPHEN = 45;
const POINT = 46;
const SLASH = 47;
const COLON = 58;
const LETTER_T = 84;
const LETTER_T_SMALL = 116;

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function isLetter(code: number): boolean {
  return (code >= 65 && code <= 90) || (code >= 97 && code <= 122) || code >= 0xc0;
}

function trimmedEnd(text: string, from: number, to: number): number {
  let end = to;
  while (end > from && isSpace(text.charCodeAt(end - 1))) end -= 1;
  return end;
}

function skipSpaces(text: string, at: number, to: number): number {
  let next = at;
  while (next < to && isSpace(text.charCodeAt(next))) next += 1;
  return next;
}

/** Reads digits from `at` on, at most 14, into `into.number`, and gives the place behind them. */
function readDigits(text: string, at: number, to: number, into: StampParts): number {
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

/** Place behind the date, or -1. */
function readDate(text: string, from: number, to: number, into: StampParts): number {
  let at = skipSpaces(text, from, to);
  if (at < to && isLetter(text.charCodeAt(at))) return readDateAfterWord(text, at, to, into);
  at = readDigits(text, at, to, into);
  const first = into.number;
  switch (into.digits) {
    case 4:
      return readYearFirst(text, at, to, first, into);
    case 8:
      into.style = 'year-first';
      into.year = Math.floor(first / 10_000);
      into.month = Math.floor(first / 100) % 100;
      into.day = first % 100;
      return isLoggedYear(into) && isDate(into) ? at : -1;
    case 12:
    case 14:
      return readPacked(into.digits === 12 ? first * 100 : first, at, to, into);
    case 1:
    case 2:
      return readYearLast(text, at, to, first, into);
    default:
      return -1;
  }
}

/** YYYYMMDDhhmmss in one number, with nothing behind it. */
function readPacked(packed: number, at: number, to: number, into: StampParts): number {
  const date = Math.floor(packed / 1_000_000);
  into.style = 'year-first';
  into.year = Math.floor(date / 10_000);
  into.month = Math.floor(date / 100) % 100;
  into.day = date % 100;
  const clock = packed % 1_000_000;
  const isClock = setClock(into, Math.floor(clock / 10_000), Math.floor(clock / 100) % 100, clock % 100, 0);
  return isClock && isLoggedYear(into) && isDate(into) && at === to ? at : -1;
}

/** 2026-02-10, 2026/2/10, 2026.02.10, 2026-Feb-10, and the ordinal date 2026-041. */
function readYearFirst(text: string, from: number, to: number, year: number, into: StampParts): number {
  const separator = text.charCodeAt(from);
  if (!isDateSeparator(separator)) return -1;
  into.style = 'year-first';
  into.year = year;
  let at = from + 1;
  if (at < to && isLetter(text.charCodeAt(at))) {
    at = readMonthName(text, at, to, into);
    if (at === -1) return -1;
  } else {
    at = readDigits(text, at, to, into);
    into.month = into.number;
    if (into.digits === 3 && text.charCodeAt(at) !== separator) {
      into.month = 1;
      into.day = into.number; // day of the year: wallTime counts on from 1 January
      return into.number >= 1 && into.number <= 366 ? at : -1;
    }
    if (into.digits < 1 || into.digits > 2) return -1;
  }
  if (text.charCodeAt(at) !== separator) return -1;
  at = readDigits(text, at + 1, to, into);
  into.day = into.number;
  return into.digits >= 1 && into.digits <= 2 && isDate(into) ? at : -1;
}

/** 10/02/2026, 10.02.26, 10-Feb-2026, 10 Feb 2026. */
function readYearLast(text: string, from: number, to: number, first: number, into: StampParts): number {
  let at = from;
  let separator = text.charCodeAt(at);
  if (separator === POINT && isSpace(text.charCodeAt(at + 1))) at += 1; // "10. Feb 2026"
  separator = text.charCodeAt(at);
  if (!isDateSeparator(separator) && !isSpace(separator)) return -1;
  at += 1;
  if (at < to && isLetter(text.charCodeAt(at))) {
    at = readMonthName(text, at, to, into);
    if (at === -1) return -1;
    into.style = 'named-month';
    into.day = first;
  } else {
    if (isSpace(separator)) return -1;
    at = readDigits(text, at, to, into);
    if (into.digits < 1 || into.digits > 2) return -1;
    into.style = separator === POINT ? 'dots' : 'slash';
    into.month = first;
    into.day = into.number;
  }
  const second = text.charCodeAt(at);
  if (!isDateSeparator(second) && !isSpace(second)) return -1;
  return readLastYear(text, at + 1, to, into);
}

/** Feb 10, 2026, and any of the forms behind the name of a weekday. */
function readDateAfterWord(text: string, from: number, to: number, into: StampParts): number {
  const monthFirst = readMonthFirst(text, from, to, into);
  if (monthFirst !== -1) return monthFirst;
  let at = from;
  while (at < to && isLetter(text.charCodeAt(at))) at += 1;
  if (text.charCodeAt(at) === COMMA || text.charCodeAt(at) === POINT) at += 1;
  const next = skipSpaces(text, at, to);
  if (next >= to || next < from + 3) return -1;
  return isDigit(text.charCodeAt(next)) ? readDate(text, next, to, into) : readMonthFirst(text, next, to, into);
}

function readMonthFirst(text: string, from: number, to: number, into: StampParts): number {
  let at = readMonthName(text, from, to, into);
  if (at === -1) return -1;
  at = readDigits(text, skipSpaces(text, at, to), to, into);
  if (into.digits < 1 || into.digits > 2) return -1;
  into.style = 'named-month';
  into.day = into.number;
  if (text.charCodeAt(at) === COMMA) at += 1;
  return readLastYear(text, skipSpaces(text, at, to), to, into);
}

function readLastYear(text: string, from: number, to: number, into: StampParts): number {
  const at = readDigits(text, from, to, into);
  if (into.digits === 4) into.year = into.number;
  else if (into.digits === 2) into.year = into.number + (into.number < 70 ? 2000 : 1900);
  else return -1;
  return isDate(into) ? at : -1;
}

function readMonthName(text: string, from: number, to: number, into: StampParts): number {
  let at = from;
  while (at < to && isLetter(text.charCodeAt(at))) at += 1;
  into.month = monthOfName(text.slice(from, at));
  if (into.month === 0) return -1;
  return text.charCodeAt(at) === POINT ? at + 1 : at;
}

function isDateSeparator(code: number): boolean {
  return code === HYPHEN || code === SLASH || code === POINT;
}

/** Whether a number taken apart begins with a year: any other long number is not a date. */
function isLoggedYear(parts: StampParts): boolean {
  return parts.year >= FIRST_YEAR && parts.year <= LAST_YEAR;
}

/** Whether the two numbers beside the year can be a month and a day, in one order at least where that is open. */
function isDate(parts: StampParts): boolean {
  const { month, day } = parts;
  if (month < 1 || day < 1 || month > 31 || day > 31) return false;
  return month <= 12 || ((parts.style === 'slash' || parts.style === 'dots') && day <= 12);
}

/** The time of day from `from` to the very end, with its zone where it has one. */
function readClock(text: string, from: number, to: number, into: StampParts): boolean {
  let at = readDigits(text, skipSpaces(text, from, to), to, into);
  let hour = into.number;
  let minute = 0;
  let second = 0;
  let fractionMs = 0;
  if (text.charCodeAt(at) === COLON && into.digits <= 2) {
    at = readDigits(text, at + 1, to, into);
    if (into.digits !== 2) return false;
    minute = into.number;
    if (at < to && text.charCodeAt(at) === COLON) {
      at = readDigits(text, at + 1, to, into);
      if (into.digits !== 2) return false;
      second = into.number;
    }
  } else if (into.digits === 4 || into.digits === 6) {
    const packed = into.digits === 4 ? into.number * 100 : into.number;
    hour = Math.floor(packed / 10_000);
    minute = Math.floor(packed / 100) % 100;
    second = packed % 100;
  } else return false;
  if (at < to && (text.charCodeAt(at) === POINT || text.charCodeAt(at) === COMMA)) {
    const fractionFrom = at + 1;
    at = readDigits(text, fractionFrom, to, into);
    if (at === fractionFrom) return false;
    fractionMs = Math.round((into.number / 10 ** (at - fractionFrom)) * 1000);
  }
  at = skipSpaces(text, at, to);
  const half = halfOfDay(text, at, to);
  if (half !== 0) {
    if (hour > 12) return false;
    hour = (hour % 12) + (half === 2 ? 12 : 0);
    into.isTwelveHour = true;
    at = skipSpaces(text, at + (text.charCodeAt(at + 1) === POINT ? 4 : 2), to);
  }
  return setClock(into, hour, minute, second, fractionMs) && readZone(text, at, to, into);
}

/** 1 for AM, 2 for PM, 0 for neither; "a.m." counts as well. */
function halfOfDay(text: string, at: number, to: number): 0 | 1 | 2 {
  if (at + 1 >= to) return 0;
  const letter = text.charCodeAt(at) | 32;
  const next = text.charCodeAt(at + 1);
  const hasM = (next | 32) === 109 || (next === POINT && (text.charCodeAt(at + 2) | 32) === 109);
  if (!hasM) return 0;
  if (letter === 97) return 1;
  return letter === 112 ? 2 : 0;
}

function setClock(into: StampParts, hour: number, minute: number, second: number, fractionMs: number): boolean {
  into.hasClock = true;
  into.clockMs = ((hour * 60 + minute) * 60 + second) * 1000 + fractionMs;
  // 24:00 is the end of the day, and second 60 a leap second: both are instants of the next minute.
  return minute < 60 && second <= 60 && (hour < 24 || into.clockMs === 86_400_000);
}

const ZONE = /^(?:z|(?:utc|gmt)?\s*([+\-\u2212])(\d{1,2})(?::?(\d{2}))?|utc|gmt)$/i;

function readZone(text: string, at: number, to: number, into: StampParts): boolean {
  if (at >= to) return true;
  if (to - at === 1 && (text.charCodeAt(at) | 32) === 122) {
    into.offsetMinutes = 0;
    return true;
  }
  const zone = ZONE.exec(text.slice(at, to));
  if (zone === null) return false;
  const [, sign, hours = '0', minutes = '0'] = zone;
  const size = Number(hours) * 60 + Number(minutes);
  into.offsetMinutes = sign === '-' || sign === '\u2212' ? -size : size;
  return Number(minutes) < 60 && size <= 18 * 60;
}
