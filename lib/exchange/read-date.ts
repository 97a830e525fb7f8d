import { isSpace } from './decimal';
import { monthOfName } from './month-names';
import {
  COMMA,
  FIRST_YEAR,
  HYPHEN,
  isDigit,
  isLetter,
  LAST_YEAR,
  POINT,
  readDigits,
  SLASH,
  type StampParts,
  setClock,
  skipSpaces,
} from './stamp-parts';

/** Reads a date at the beginning of text[from, to); the place behind it, or -1. */
export function readDate(text: string, from: number, to: number, into: StampParts): number {
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
