import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS, SECOND_MS } from '@/lib/units/instant';
import type { ClockRule } from './local-clock';
import { LocalClock } from './local-clock';

/** What a log shows of the changes of its clock. Wall times are given as if they were UTC. */
export interface ClockEvidence {
  /** Rows in an hour that the clock of the place skips, and the first of them. */
  readonly skippedRows: number;
  readonly firstSkippedWallMs: number | null;
  /** Rows in an hour that the clock shows twice, and how many of them belong to its second pass. */
  readonly repeatedRows: number;
  readonly secondPassRows: number;
  /** The wall time behind a repeated hour that the log passed only once, by its usual step; null when there is none. */
  readonly passedOnceWallMs: number | null;
}

/** How a log moves: whether later rows are later or earlier, and its usual step (0: not known). */
export interface LogPace {
  readonly direction: 1 | -1;
  readonly stepMs: number;
}

/**
 * Turns the wall times of a log, row after row, into instants. In an hour that the clock shows twice the place of the
 * row in the log decides: it belongs to the second pass (in a log that runs backwards: to the first) when that comes
 * nearer to the usual step from the row before, or when the log, in order so far, would otherwise go back.
 *
 * Source of the rule: chosen; the fixtures F5 and F7 of the reference pack are its test.
 */
export class RowClock {
  readonly #rule: ClockRule;
  readonly #pace: LogPace;
  readonly #clock: LocalClock | null;
  #standardDay = Number.NaN;
  #standardOffsetMs = 0;
  #lastAt: Instant = Number.NaN;
  #lastWallMs = Number.NaN;
  #lastPass: 'none' | 'near' | 'far' = 'none';
  #isInOrder = true;
  #skippedRows = 0;
  #firstSkippedWallMs: number | null = null;
  #repeatedRows = 0;
  #secondPassRows = 0;
  #passedOnceWallMs: number | null = null;

  constructor(rule: ClockRule, pace: LogPace) {
    this.#rule = rule;
    this.#pace = pace;
    this.#clock = rule.kind === 'fixed' ? null : new LocalClock(rule.timeZone);
  }

  /** The instant of the next row, whose wall time is `wallMs`. */
  instant(wallMs: number): Instant {
    if (this.#clock === null) {
      return this.#rule.kind === 'fixed' ? wallMs - this.#rule.offsetMinutes * MINUTE_MS : wallMs;
    }
    if (this.#rule.kind === 'standard-all-year') return wallMs - this.#standardOffset(this.#clock, wallMs);
    const meaning = this.#clock.meaning(wallMs);
    let at = wallMs - meaning.offsetMs;
    let pass: 'none' | 'near' | 'far' = 'none';
    if (meaning.kind === 'twice') {
      const later = wallMs - meaning.laterOffsetMs;
      const isForward = this.#pace.direction === 1;
      const near = isForward ? at : later;
      const isFar = this.#isFarPass(wallMs, near, later - at);
      pass = isFar ? 'far' : 'near';
      at = isFar === isForward ? later : at;
      this.#repeatedRows += 1;
      if (isFar === isForward) this.#secondPassRows += 1;
    } else {
      if (meaning.kind === 'skipped') this.#noteSkipped(wallMs);
      this.#notePassedOnce(wallMs, at);
    }
    if ((at - this.#lastAt) * this.#pace.direction < 0) this.#isInOrder = false;
    this.#lastAt = at;
    this.#lastWallMs = wallMs;
    this.#lastPass = pass;
    return at;
  }

  /** What was seen of clock changes so far. */
  evidence(): ClockEvidence {
    return {
      skippedRows: this.#skippedRows,
      firstSkippedWallMs: this.#firstSkippedWallMs,
      repeatedRows: this.#repeatedRows,
      secondPassRows: this.#secondPassRows,
      passedOnceWallMs: this.#passedOnceWallMs,
    };
  }

  #isFarPass(wallMs: number, near: Instant, shiftMs: number): boolean {
    if (Number.isNaN(this.#lastAt)) return false;
    const elapsed = (near - this.#lastAt) * this.#pace.direction;
    if (elapsed < this.#pace.stepMs - shiftMs / 2) return true;
    if (elapsed < 0 && this.#isInOrder) return true;
    return this.#lastPass === 'far' && (wallMs - this.#lastWallMs) * this.#pace.direction >= 0 && elapsed <= 0;
  }

  #noteSkipped(wallMs: number): void {
    this.#firstSkippedWallMs ??= wallMs;
    this.#skippedRows += 1;
  }

  /** A clock that goes from a repeated hour straight on to the next one, by its usual step, was never set back. */
  #notePassedOnce(wallMs: number, at: Instant): void {
    if (this.#lastPass !== 'near' || this.#pace.stepMs === 0 || this.#passedOnceWallMs !== null) return;
    const wallStep = (wallMs - this.#lastWallMs) * this.#pace.direction;
    const elapsed = (at - this.#lastAt) * this.#pace.direction;
    const isUsualStep = Math.abs(wallStep - this.#pace.stepMs) <= this.#pace.stepMs / 4 + SECOND_MS;
    if (isUsualStep && elapsed > wallStep) this.#passedOnceWallMs = wallMs;
  }

  #standardOffset(clock: LocalClock, wallMs: number): number {
    const day = Math.floor(wallMs / 86_400_000);
    if (day !== this.#standardDay) {
      this.#standardDay = day;
      this.#standardOffsetMs = clock.standardOffset(wallMs);
    }
    return this.#standardOffsetMs;
  }
}
