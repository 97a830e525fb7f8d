import type { CalendarAlarm, PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import { exactDuration, utcDateTime } from '@/lib/exchange/calendar/calendar-time';
import { escapedText, foldedLine } from '@/lib/exchange/calendar/content-line';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** How often a subscriber may ask at most. Chosen: releases move with the temperature, by minutes an hour. */
const REFRESH = exactDuration(HOUR_MS);

/**
 * A calendar as a stream that other programs subscribe to: text/calendar, UTF-8, every line ended by CRLF. Times are
 * UTC instants and lengths are exact, so that no table of zones is needed; without METHOD it is a plain snapshot.
 * Entries in the order given. `name` is what a subscriber shows as the calendar's name.
 * Source: RFC 5545 (seen); NAME and REFRESH-INTERVAL: RFC 7986 sections 5.1 and 5.7 (seen).
 */
export function calendarText(name: string, entries: readonly PublishedEntry[]): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Lurewright//Workshop calendar//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escapedText(name)}`,
    `REFRESH-INTERVAL;VALUE=DURATION:${REFRESH}`,
    ...entries.flatMap(eventLines),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${foldedLine(line)}\r\n`).join('');
}

function eventLines(entry: PublishedEntry): readonly string[] {
  const changedAt = utcDateTime(entry.changedAt);
  return [
    'BEGIN:VEVENT',
    `UID:${escapedText(entry.uid)}`,
    // Without METHOD it tells when the entry was last revised: section 3.8.7.2.
    `DTSTAMP:${changedAt}`,
    `LAST-MODIFIED:${changedAt}`,
    `SEQUENCE:${entry.sequence}`,
    `DTSTART:${utcDateTime(entry.startAt)}`,
    `DURATION:${exactDuration(entry.endAt - entry.startAt)}`,
    `SUMMARY:${escapedText(entry.summary)}`,
    ...(entry.description === '' ? [] : [`DESCRIPTION:${escapedText(entry.description)}`]),
    `STATUS:${entry.isCancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    `TRANSP:${entry.isAttended ? 'OPAQUE' : 'TRANSPARENT'}`,
    ...(entry.isCancelled ? [] : entry.alarms.flatMap(alarmLines)),
    'END:VEVENT',
  ];
}

function alarmLines({ from, minutesBefore, text }: CalendarAlarm): readonly string[] {
  const related = from === 'end' ? ';RELATED=END' : '';
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escapedText(text)}`,
    `TRIGGER${related}:${exactDuration(-minutesBefore * MINUTE_MS)}`,
    'END:VALARM',
  ];
}
