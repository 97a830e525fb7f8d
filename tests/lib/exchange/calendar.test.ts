import { describe, expect, test } from 'vitest';
import type { CalendarEntry, PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import { calendarText } from '@/lib/exchange/calendar/calendar-text';
import { exactDuration, utcDateTime } from '@/lib/exchange/calendar/calendar-time';
import { escapedText, foldedLine } from '@/lib/exchange/calendar/content-line';
import { publishEntries } from '@/lib/exchange/calendar/publish-entries';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

const octets = (text: string) => new TextEncoder().encode(text).length;
const NOW = Date.UTC(2026, 2, 7, 20);

const entry = (uid: string, startAt: number, hours = 1): CalendarEntry => ({
  uid,
  startAt,
  endAt: startAt + hours * HOUR_MS,
  summary: 'Batch 7: glue-up',
  description: '',
  isAttended: true,
  alarms: [{ from: 'end', minutesBefore: 60, text: 'closes' }],
});

describe('lines, RFC 5545 section 3.1: at most 75 octets, never inside a character', () => {
  test('75 octets stay on one line, one more folds', () => {
    expect(foldedLine(`SUMMARY:${'x'.repeat(67)}`)).toBe(`SUMMARY:${'x'.repeat(67)}`);
    expect(foldedLine(`SUMMARY:${'x'.repeat(68)}`)).toBe(`SUMMARY:${'x'.repeat(67)}\r\n x`);
  });

  test('a character of two octets that would straddle octet 75 moves to the next line', () => {
    const lines = foldedLine(`SUMMARY:${'x'.repeat(66)}\u00b0C`).split('\r\n');
    expect(lines.map(octets)).toEqual([74, 4]);
    expect(lines[1]).toBe(' \u00b0C');
  });

  test('a line of mixed characters folds at 73 octets, since the next one has three', () => {
    const text =
      'Batch 7; glue-up, 24 eyes: recoat window closes at 21 \u00b0C film \u2248 0.25 mm \u2014 sand after this';
    const line = `SUMMARY:${escapedText(text)}`;
    expect(line).toContain('Batch 7\\; glue-up\\, 24 eyes: recoat');
    expect(octets(line)).toBe(104);
    expect(foldedLine(line).split('\r\n').map(octets)).toEqual([73, 32]);
  });

  test('long text folds into continued lines of 75 octets with their space', () => {
    expect(foldedLine('y'.repeat(230)).split('\r\n').map(octets)).toEqual([75, 75, 75, 8]);
  });
});

describe('text values, RFC 5545 section 3.3.11', () => {
  test('line ends, backslashes, semicolons and commas are escaped, colons are not', () => {
    const escaped = escapedText('Line one: resin 9.0 g, hardener 4.5 g\nPath C:\\jig;\nend');
    expect(escaped).toBe('Line one: resin 9.0 g\\, hardener 4.5 g\\nPath C:\\\\jig\\;\\nend');
    expect(octets(`DESCRIPTION:${escaped}`)).toBe(71);
  });

  test('every kind of line end is one, and control characters are left out', () => {
    expect(escapedText('a\r\nb\rc\u0007\td')).toBe('a\\nb\\nc\td');
  });
});

describe('times and lengths', () => {
  test('a day of cure is 24 exact hours, never P1D, also over a clock change', () => {
    expect(exactDuration(24 * HOUR_MS)).toBe('PT24H');
    expect(exactDuration(72 * HOUR_MS)).toBe('PT72H');
    expect(exactDuration(-15 * MINUTE_MS)).toBe('-PT15M');
    expect(exactDuration(HOUR_MS + 5_000)).toBe('PT1H0M5S');
    expect(exactDuration(0)).toBe('PT0S');
    expect(() => exactDuration(Number.NaN)).toThrow(RangeError);
  });

  test('instants are UTC: 12 h from 20:00 CST on 7 March 2026 is 14:00 UTC', () => {
    expect(utcDateTime(Date.UTC(2026, 2, 8, 2) + 12 * HOUR_MS)).toBe('20260308T140000Z');
    expect(() => utcDateTime(Number.NaN)).toThrow(RangeError);
  });
});

describe('what is published', () => {
  const first = publishEntries([], [entry('a', NOW + HOUR_MS), entry('b', NOW + 2 * HOUR_MS)], NOW);

  test('new entries begin at 0, and reading again changes nothing', () => {
    expect(first.entries.map(({ sequence }) => sequence)).toEqual([0, 0]);
    const again = publishEntries(first.entries, [entry('b', NOW + 2 * HOUR_MS), entry('a', NOW + HOUR_MS)], NOW + 1);
    expect(again.changed).toEqual([]);
    expect(again.entries).toEqual(first.entries);
  });

  test('a moved entry keeps its uid and has the next number; one gone is called off, and may come back', () => {
    const moved = publishEntries(first.entries, [entry('a', NOW + 3 * HOUR_MS)], NOW + MINUTE_MS);
    const byUid = (entries: readonly PublishedEntry[], uid: string) => entries.find((one) => one.uid === uid);
    expect(byUid(moved.entries, 'a')).toMatchObject({ sequence: 1, isCancelled: false, changedAt: NOW + MINUTE_MS });
    expect(byUid(moved.entries, 'b')).toMatchObject({ sequence: 1, isCancelled: true });
    const back = publishEntries(moved.entries, [entry('b', NOW + 2 * HOUR_MS)], NOW + 2 * MINUTE_MS);
    expect(byUid(back.entries, 'b')).toMatchObject({ sequence: 2, isCancelled: false });
  });

  test('what has begun stays as it was when it is gone, and leaves after a month', () => {
    const later = publishEntries(first.entries, [], NOW + 5 * HOUR_MS);
    expect(later.changed).toEqual([]);
    expect(later.entries).toHaveLength(2);
    const muchLater = publishEntries(first.entries, [], NOW + 24 * 31 * HOUR_MS);
    expect(muchLater.forgotten).toEqual(['a', 'b']);
    expect(muchLater.entries).toEqual([]);
  });
});

test('a calendar reads line by line as RFC 5545 section 3.6 has it', () => {
  const { entries } = publishEntries([], [entry('a@lurewright', NOW)], NOW);
  expect(calendarText('North shed', entries).split('\r\n')).toEqual([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Lurewright//Workshop calendar//EN',
    'CALSCALE:GREGORIAN',
    'NAME:North shed',
    'REFRESH-INTERVAL;VALUE=DURATION:PT1H',
    'BEGIN:VEVENT',
    'UID:a@lurewright',
    'DTSTAMP:20260307T200000Z',
    'LAST-MODIFIED:20260307T200000Z',
    'SEQUENCE:0',
    'DTSTART:20260307T200000Z',
    'DURATION:PT1H',
    'SUMMARY:Batch 7: glue-up',
    'STATUS:CONFIRMED',
    'TRANSP:OPAQUE',
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    'DESCRIPTION:closes',
    'TRIGGER;RELATED=END:-PT1H',
    'END:VALARM',
    'END:VEVENT',
    'END:VCALENDAR',
    '',
  ]);
});
