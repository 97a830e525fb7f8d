import type { Instant } from '@/lib/units/instant';
import type { ReadingColumns } from './reading-columns';
import type { LayoutQuestion, ReadingLayout } from './reading-layout';
import type { RefusedRow } from './refusals';
import type { ClockEvidence } from './row-clock';
import type { RefusalReason } from './row-reader';
import type { SeriesNotes } from './series-notes';

/** Where every line of a file went: heading + blank + accepted + duplicate + refused = lines. */
interface LineCounts {
  readonly lines: number;
  /** Lines before the first row: `sep=`, what the logger says of itself, headings. */
  readonly heading: number;
  readonly blank: number;
  /** Rows that became a reading of their own. */
  readonly accepted: number;
  /** Rows averaged into another one of the same instant. */
  readonly duplicate: number;
  readonly refused: number;
}

/** One of the first rows as it was read. */
interface RowAsRead {
  readonly line: number;
  readonly text: string;
  readonly at: Instant;
  readonly temperatureC: number;
  readonly humidityPct: number | null;
}

/** What a maker sees before anything is kept. */
export interface ReadingFileReport {
  readonly layout: ReadingLayout;
  readonly counts: LineCounts;
  readonly firstRows: readonly RowAsRead[];
  readonly refusedRows: readonly RefusedRow[];
  readonly refusedBy: Readonly<Record<RefusalReason, number>>;
  /** Null when no row was accepted, which only happens while a question is open. */
  readonly notes: SeriesNotes | null;
  readonly clock: ClockEvidence;
  readonly outOfOrderRows: number;
  /** Whether the file runs from the newest reading to the oldest; that is not out of order. */
  readonly isBackwards: boolean;
  /** Whether Unix times in seconds and in milliseconds stand in one file, which deserves a second look. */
  readonly isEpochMixed: boolean;
  /** Rows whose humidity was no number from 0 to 100; their temperature is kept. */
  readonly badHumidityRows: number;
}

/** Why a file cannot be read at all. */
export type UnreadableCode = 'empty' | 'no-rows' | 'no-time' | 'no-temperature' | 'no-reading' | 'too-many-rows';

/** What came of a file: readings; questions that must be answered first; or a reason why it cannot be read. */
export type ReadingFileResult =
  | { readonly state: 'read'; readonly report: ReadingFileReport; readonly readings: ReadingColumns }
  | { readonly state: 'asks'; readonly report: ReadingFileReport; readonly questions: readonly LayoutQuestion[] }
  | {
      readonly state: 'unreadable';
      readonly code: UnreadableCode;
      readonly lines: number;
      readonly firstLines: readonly string[];
      readonly refusedRows: readonly RefusedRow[];
    };
