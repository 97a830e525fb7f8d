import { COLON, COMMA, POINT, readDigits, type StampParts, setClock, skipSpaces } from './stamp-parts';

/** The time of day from `from` to the very end, with its zone where it has one. */
export function readClock(text: string, from: number, to: number, into: StampParts): boolean {
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
