import type { RefusalReason } from './row-reader';

/** A row that holds no reading. */
export interface RefusedRow {
  /** Line in the file, from 1. */
  readonly line: number;
  readonly reason: RefusalReason;
  /** The line as it stands in the file, cut after SHOWN_CHARACTERS. */
  readonly text: string;
}

/** Refused rows that are listed; all are counted. Chosen. */
export const LISTED_REFUSALS = 200;

const SHOWN_CHARACTERS = 120;

/** Collects refused rows: all counted, the first ones listed. */
export class Refusals {
  count = 0;
  readonly listed: RefusedRow[] = [];
  readonly counts: Record<RefusalReason, number> = {
    'no-time': 0,
    'bad-time': 0,
    'no-value': 0,
    'bad-value': 0,
    'out-of-range': 0,
    'power-up-value': 0,
    'too-few-fields': 0,
    'open-quote': 0,
    'line-too-long': 0,
  };

  add(line: number, reason: RefusalReason, text: string): void {
    this.count += 1;
    this.counts[reason] += 1;
    if (this.listed.length < LISTED_REFUSALS) this.listed.push({ line, reason, text: shownLine(text) });
  }

  /** The listed rows by their lines: some reasons show only at the end of the file. */
  inOrder(): RefusedRow[] {
    return [...this.listed].sort((a, b) => a.line - b.line);
  }
}

/** A line as it is shown to the maker. */
export function shownLine(text: string): string {
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}
