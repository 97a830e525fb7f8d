import type { Instant } from '@/lib/units/instant';

/** When a calendar is to ring: so many minutes before the entry begins, or before it ends. */
export interface CalendarAlarm {
  readonly from: 'start' | 'end';
  readonly minutesBefore: number;
  readonly text: string;
}

/** Something with a time that a maker's calendar shows. */
export interface CalendarEntry {
  /** The same for as long as the thing itself is the same; unique in the world. At most 255 octets. */
  readonly uid: string;
  readonly startAt: Instant;
  /** After `startAt`. */
  readonly endAt: Instant;
  readonly summary: string;
  readonly description: string;
  /** Whether it takes up a person's time. */
  readonly isAttended: boolean;
  readonly alarms: readonly CalendarAlarm[];
}

/** An entry as it was published last. */
export interface PublishedEntry extends CalendarEntry {
  /** 0 when it is first published, raised with every change. */
  readonly sequence: number;
  /** When this state was published first. */
  readonly changedAt: Instant;
  readonly isCancelled: boolean;
}
