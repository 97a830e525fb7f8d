import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { zoneOffsetMs } from '@/lib/units/zoned-time';

/** How wall times become instants: the clock of a place, that place without its summer time, or a fixed offset. */
export type ClockRule =
  | { readonly kind: 'place'; readonly timeZone: string }
  | { readonly kind: 'standard-all-year'; readonly timeZone: string }
  | { readonly kind: 'fixed'; readonly offsetMinutes: number };

/**
 * What a wall time means: one instant; two, in the hour a clock shows twice; or none, in the hour it skips. Offsets
 * are wall time minus instant, in ms. `laterOffsetMs` belongs to the second pass of a repeated hour.
 */
export interface WallMeaning {
  readonly kind: 'once' | 'twice' | 'skipped';
  readonly offsetMs: number;
  readonly laterOffsetMs: number;
}

const DAY_MS = 24 * HOUR_MS;
const QUARTER_MS = 15 * MINUTE_MS;

/**
 * The wall clock of one time zone, quick enough for every row of a long file: the time-zone library is asked a few
 * times a day of the log, and every quarter of an hour only on days when the clock changes.
 *
 * A skipped wall time gets the offset before the gap (RFC 5545, section 3.3.5, from memory), so 02:30 on the night
 * that skips 02:00 to 03:00 means the instant that the clock shows as 03:30.
 */
export class LocalClock {
  readonly #timeZone: string;
  readonly #days = new Map<number, WallMeaning | null>();
  readonly #quarters = new Map<number, WallMeaning>();
  #lastDay = Number.NaN;
  #lastMeaning: WallMeaning | null = null;

  /** `timeZone`: a name of the IANA data base. RangeError when the runtime does not know it. */
  constructor(timeZone: string) {
    this.#timeZone = timeZone;
    this.offsetAt(0);
  }

  /** What the wall time `wallMs` means (a wall time is written as if it were UTC). */
  meaning(wallMs: number): WallMeaning {
    const day = Math.floor(wallMs / DAY_MS);
    if (day !== this.#lastDay) {
      this.#lastDay = day;
      this.#lastMeaning = this.#ofDay(day);
    }
    return this.#lastMeaning ?? this.#ofQuarter(Math.floor(wallMs / QUARTER_MS));
  }

  /** Offset at an instant, in ms. */
  offsetAt(at: Instant): number {
    return zoneOffsetMs(at, this.#timeZone);
  }

  /** Meaning of a whole day, or null when the clock changes on it or near it. */
  #ofDay(day: number): WallMeaning | null {
    const known = this.#days.get(day);
    if (known !== undefined) return known;
    const before = this.offsetAt((day - 1) * DAY_MS);
    const after = this.offsetAt((day + 2) * DAY_MS);
    // Two changes within three days that cancel each other out would go unseen: no zone has them. Common knowledge.
    const meaning: WallMeaning | null =
      before === after ? { kind: 'once', offsetMs: before, laterOffsetMs: before } : null;
    this.#days.set(day, meaning);
    return meaning;
  }

  /** Clocks change on quarters of an hour, so all wall times of one quarter mean the same. */
  #ofQuarter(quarter: number): WallMeaning {
    const known = this.#quarters.get(quarter);
    if (known !== undefined) return known;
    const wallMs = quarter * QUARTER_MS;
    const before = this.offsetAt(wallMs - 2 * DAY_MS);
    const after = this.offsetAt(wallMs + 2 * DAY_MS);
    const isBefore = this.offsetAt(wallMs - before) === before;
    const isAfter = this.offsetAt(wallMs - after) === after;
    let meaning: WallMeaning;
    if (isBefore && isAfter && before !== after) {
      meaning = { kind: 'twice', offsetMs: Math.max(before, after), laterOffsetMs: Math.min(before, after) };
    } else if (isBefore || isAfter) {
      const offsetMs = isBefore ? before : after;
      meaning = { kind: 'once', offsetMs, laterOffsetMs: offsetMs };
    } else meaning = { kind: 'skipped', offsetMs: before, laterOffsetMs: before };
    this.#quarters.set(quarter, meaning);
    return meaning;
  }

  /** Offset of the year of `wallMs` without summer time: the smaller of January's and July's. */
  standardOffset(wallMs: number): number {
    const year = new Date(wallMs).getUTCFullYear();
    return Math.min(this.offsetAt(Date.UTC(year, 0, 1)), this.offsetAt(Date.UTC(year, 6, 1)));
  }
}
