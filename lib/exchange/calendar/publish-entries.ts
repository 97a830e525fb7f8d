import type { CalendarEntry, PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import { HOUR_MS, type Instant } from '@/lib/units/instant';

/** How long what is over, or was called off, stays in the calendar. Chosen: a month of 24 hours a day. */
const KEPT_MS = 30 * 24 * HOUR_MS;

/** What a calendar shows next, and which of its entries have changed. */
export interface Publication {
  /** By start, then uid. */
  readonly entries: readonly PublishedEntry[];
  /** Those that are new, moved or called off. */
  readonly changed: readonly PublishedEntry[];
  /** Uids that leave the calendar for good. */
  readonly forgotten: readonly string[];
}

/**
 * Puts what is so now beside what was published. An entry that reads the same keeps its sequence number and stamp; one
 * that changed is raised by one, so that whoever has it moves it; one that is gone before it began is called off and
 * stays as such for a month; one that is gone after it began has happened, and stays as it was for a month.
 * `current` has each uid once.
 */
export function publishEntries(
  published: readonly PublishedEntry[],
  current: readonly CalendarEntry[],
  nowAt: Instant,
): Publication {
  const before = new Map(published.map((entry) => [entry.uid, entry]));
  const entries: PublishedEntry[] = [];
  const changed: PublishedEntry[] = [];
  const forgotten: string[] = [];
  const change = (entry: PublishedEntry) => {
    entries.push(entry);
    changed.push(entry);
  };
  for (const entry of current) {
    const known = before.get(entry.uid);
    before.delete(entry.uid);
    if (known === undefined) change({ ...entry, sequence: 0, changedAt: nowAt, isCancelled: false });
    else if (!known.isCancelled && isSame(known, entry)) entries.push(known);
    else change({ ...entry, sequence: known.sequence + 1, changedAt: nowAt, isCancelled: false });
  }
  for (const entry of before.values()) {
    if (nowAt - Math.max(entry.changedAt, entry.endAt) > KEPT_MS) forgotten.push(entry.uid);
    else if (entry.isCancelled || entry.startAt <= nowAt) entries.push(entry);
    else change({ ...entry, sequence: entry.sequence + 1, changedAt: nowAt, isCancelled: true });
  }
  const inOrder = (a: PublishedEntry, b: PublishedEntry) => a.startAt - b.startAt || (a.uid < b.uid ? -1 : 1);
  return { entries: entries.sort(inOrder), changed: changed.sort(inOrder), forgotten };
}

function isSame(a: CalendarEntry, b: CalendarEntry): boolean {
  return contentOf(a) === contentOf(b);
}

function contentOf({ startAt, endAt, summary, description, isAttended, alarms }: CalendarEntry): string {
  const rings = alarms.map(({ from, minutesBefore, text }) => [from, minutesBefore, text]);
  return JSON.stringify([startAt, endAt, summary, description, isAttended, rings]);
}
