import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import type { PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import { calendarText } from '@/lib/exchange/calendar/calendar-text';
import { MINUTE_MS, SECOND_MS } from '@/lib/units/instant';

/**
 * Calendars written here, read by a parser of others (npm ical.js, seen): what comes out is what went in.
 * Feeds tried: 1,000 with SOAK=1, 100 otherwise.
 */
const FEEDS = process.env.SOAK === '1' ? 1_000 : 100;

const second = fc.integer({ min: Date.UTC(2020, 0) / SECOND_MS, max: Date.UTC(2040, 0) / SECOND_MS });
/** Everything a name may hold, with what has a meaning in the format made likely; lines end as the format ends them. */
const text = fc
  .array(
    fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 12 }),
      fc.constantFrom(
        ';',
        ',',
        '\\',
        '\n',
        ':',
        '"',
        '\\n',
        ' ',
        '\t',
        '\u00b0',
        '\u2248',
        '\ud83d\udc1f',
        'x'.repeat(80),
      ),
    ),
    { maxLength: 20 },
  )
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what the format forbids
  .map((parts) => parts.join('').replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, ''));

const published: fc.Arbitrary<PublishedEntry> = fc
  .record({
    uid: fc.uuid(),
    start: second,
    lengthMinutes: fc.integer({ min: 1, max: 60 * 24 * 30 }),
    summary: text,
    description: text,
    isAttended: fc.boolean(),
    alarms: fc.array(
      fc.record({ from: fc.constantFrom('start', 'end'), minutesBefore: fc.integer({ min: 0, max: 3_000 }), text }),
      { maxLength: 3 },
    ),
    sequence: fc.nat(1_000),
    changed: second,
    isCancelled: fc.boolean(),
  })
  .map(({ start, lengthMinutes, changed, ...rest }) => ({
    ...rest,
    startAt: start * SECOND_MS,
    endAt: start * SECOND_MS + lengthMinutes * MINUTE_MS,
    changedAt: changed * SECOND_MS,
  }));

const instantOf = (time: ICAL.Time) => time.toJSDate().getTime();

function stampOf(component: ICAL.Component): ICAL.Time {
  const stamp = component.getFirstPropertyValue('dtstamp');
  if (!(stamp instanceof ICAL.Time)) throw new Error('an entry has no stamp');
  return stamp;
}

function readBack(stream: string) {
  const calendar = new ICAL.Component(ICAL.parse(stream));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const status = component.getFirstPropertyValue('status');
    return {
      uid: event.uid,
      startAt: instantOf(event.startDate),
      endAt: instantOf(event.endDate),
      zone: event.startDate.zone?.tzid,
      summary: event.summary,
      description: event.description ?? '',
      sequence: event.sequence,
      changedAt: instantOf(stampOf(component)),
      isCancelled: status === 'CANCELLED',
      isAttended: component.getFirstPropertyValue('transp') === 'OPAQUE',
      alarms: component.getAllSubcomponents('valarm').map((alarm) => {
        const trigger = alarm.getFirstProperty('trigger');
        return {
          from: trigger?.getParameter('related') === 'END' ? 'end' : 'start',
          minutesBefore: -ICAL.Duration.fromString(String(trigger?.getFirstValue())).toSeconds() / 60,
          text: alarm.getFirstPropertyValue('description'),
        };
      }),
    };
  });
}

test(`${FEEDS} random calendars come back from an independent parser as they went in`, () => {
  let entries = 0;
  let longest = 0;
  fc.assert(
    fc.property(text, fc.uniqueArray(published, { selector: ({ uid }) => uid, maxLength: 12 }), (name, feed) => {
      const stream = calendarText(name, feed);
      for (const line of stream.split('\r\n')) longest = Math.max(longest, new TextEncoder().encode(line).length);
      entries += feed.length;
      expect(stream.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      expect(readBack(stream)).toEqual(
        feed.map((entry) => ({ ...entry, zone: 'UTC', alarms: entry.isCancelled ? [] : entry.alarms.map(plusZero) })),
      );
    }),
    { numRuns: FEEDS, seed: 20_260_310 },
  );
  console.log(`${FEEDS} calendars with ${entries} entries read back; longest line ${longest} octets of 75`);
  expect(longest).toBeLessThanOrEqual(75);
});

/** No time before is read back as minus nothing. */
function plusZero<T extends { readonly minutesBefore: number }>(alarm: T): T {
  return { ...alarm, minutesBefore: alarm.minutesBefore === 0 ? -0 : alarm.minutesBefore };
}
