import { readQuantity } from '@/lib/units/read-quantity';
import { fieldsOf, hasOpenQuote, type Separator } from './cells';
import { LineSplitter } from './line-splitter';
import { LocalClock } from './local-clock';
import type { PullColumn } from './pull-columns';
import { findPullLayout, type PullLayout } from './pull-layout';
import type { PullRow, PullRowRefusal } from './pull-row';
import { readPullRow } from './pull-row-reader';
import { shownLine } from './refusals';
import { readStamp } from './stamp';
import { StampParts } from './stamp-parts';
import { chunkDecoder, type TextEncodingName, textEncodingOf } from './text-encoding';
import type { DayOrder } from './wall-time';

/** What a file leaves open and the maker must say. A wrong unit of load would spoil everything, so none is guessed. */
export type PullQuestionAsked =
  | { readonly kind: 'load-unit'; readonly example: string }
  | { readonly kind: 'depth-unit'; readonly example: string }
  | { readonly kind: 'day-order'; readonly example: string };

/** The maker's answers. Units as spelled, `lbf` or `N`, `in` or `mm`. */
export interface PullFileAnswers {
  readonly loadUnit?: string;
  readonly depthUnit?: string;
  readonly dayOrder?: DayOrder;
}

export interface RefusedPullRow {
  readonly line: number;
  readonly reason: PullRowRefusal;
  readonly text: string;
}

export interface PullFileReport {
  readonly encoding: TextEncodingName;
  readonly layout: PullLayout;
  readonly rows: readonly PullRow[];
  readonly refused: readonly RefusedPullRow[];
  readonly blankLines: number;
  /** Rows that say the very same as an earlier one; they are left out. */
  readonly repeatedLines: readonly number[];
}

/** What came of a file of pull readings. */
export type PullFileResult =
  | ({ readonly state: 'read' } & PullFileReport)
  | {
      readonly state: 'asks';
      readonly questions: readonly PullQuestionAsked[];
      readonly layout: PullLayout;
      readonly firstLines: readonly string[];
    }
  | {
      readonly state: 'unreadable';
      readonly code: 'empty' | 'no-headings' | 'too-long' | 'no-rows';
      readonly firstLines: readonly string[];
    };

/** A longer file is no file of pulls. Chosen: a hundred times the largest series. */
export const MOST_PULL_BYTES = 4_000_000;
const SHOWN_LINES = 5;

/**
 * Reads a file of pull readings: any usual encoding and separator, headings in any order and wording, loads and depths
 * as makers write them, "at least" as a column or a sign before the load. Never throws for a bad file; every line is
 * read, refused with a reason, blank, or a repeat. RangeError for an unknown time zone or a unit that is none.
 */
export function readPullFile(bytes: Uint8Array, timeZone: string, answers: PullFileAnswers = {}): PullFileResult {
  const unreadable = (code: 'empty' | 'no-headings' | 'too-long' | 'no-rows', lines: readonly string[]) => {
    return { state: 'unreadable' as const, code, firstLines: lines.slice(0, SHOWN_LINES).map(shownLine) };
  };
  if (bytes.length > MOST_PULL_BYTES) return unreadable('too-long', []);
  const decoder = chunkDecoder(textEncodingOf(bytes));
  const splitter = new LineSplitter();
  const lines = [...splitter.push(decoder.decode(bytes) + decoder.end()), ...splitter.end()];
  if (lines.every((line) => line.trim() === '')) return unreadable('empty', lines);
  const layout = findPullLayout(lines);
  if (layout === null) return unreadable('no-headings', lines);
  const body = lines.slice(layout.headingLine).map((line) => withInchWords(line, layout.separator));
  const blank = (line: string) => fieldsOf(line, layout.separator).every((field) => field === '');
  if (body.every(blank)) return unreadable('no-rows', lines);
  const questions = openQuestions(body, layout, answers);
  if (questions.length > 0) {
    return { state: 'asks', questions, layout, firstLines: lines.slice(0, SHOWN_LINES).map(shownLine) };
  }
  const rules = {
    layout,
    loadUnit: answers.loadUnit ?? layout.loadUnit ?? 'N',
    depthUnit: answers.depthUnit ?? layout.depthUnit ?? 'mm',
    dayOrder: answers.dayOrder ?? 'day-first',
    clock: new LocalClock(timeZone),
  };
  const rows: PullRow[] = [];
  const refused: RefusedPullRow[] = [];
  const repeatedLines: number[] = [];
  const seen = new Set<string>();
  let blankLines = 0;
  for (const [index, text] of body.entries()) {
    const line = layout.headingLine + 1 + index;
    if (blank(text)) {
      blankLines += 1;
      continue;
    }
    const read = hasOpenQuote(text)
      ? { ok: false as const, reason: 'open-quote' as const }
      : readPullRow(fieldsOf(text, layout.separator), line, rules);
    if (!read.ok) refused.push({ line, reason: read.reason, text: shownLine(text) });
    else if (seen.has(saying(read.row))) repeatedLines.push(line);
    else {
      seen.add(saying(read.row));
      rows.push(read.row);
    }
  }
  return { state: 'read', encoding: decoder.encoding, layout, rows, refused, blankLines, repeatedLines };
}

/** An inch mark behind a number in a field without quotes, `1/2"`, is no quote of the file: it becomes ` in`. */
function withInchWords(line: string, separator: Separator): string {
  if (!line.includes('"')) return line;
  const fields: string[] = [];
  let from = 0;
  while (from <= line.length) {
    const isQuoted = /^\s*"/.test(line.slice(from));
    const to = isQuoted ? endOfQuoted(line, from, separator) : nextSeparator(line, from, separator);
    const field = line.slice(from, to);
    fields.push(isQuoted ? field : field.replace(/([\d\u00bc-\u00be\u215b-\u215e])"\s*$/, '$1 in'));
    from = to + 1;
  }
  return fields.join(separator);
}

function nextSeparator(line: string, from: number, separator: Separator): number {
  const at = line.indexOf(separator, from);
  return at === -1 ? line.length : at;
}

/** Where a field that begins with a quote ends: at the separator behind its closing quote. */
function endOfQuoted(line: string, from: number, separator: Separator): number {
  let isInside = false;
  for (let at = from; at < line.length; at++) {
    if (line[at] === '"') isInside = !isInside;
    else if (line[at] === separator && !isInside) return at;
  }
  return line.length;
}

/** Everything a row says but its place in the file. */
function saying({ line: _, ...row }: PullRow): string {
  return JSON.stringify(row);
}

function openQuestions(body: readonly string[], layout: PullLayout, answers: PullFileAnswers): PullQuestionAsked[] {
  const cells = (column: PullColumn) => {
    const index = layout.columns.get(column);
    if (index === undefined) return [];
    return body.map((line) => (fieldsOf(line, layout.separator)[index] ?? '').trim()).filter((text) => text !== '');
  };
  const questions: PullQuestionAsked[] = [];
  const load = cells('load').find((text) => /\d\s*\+?$/.test(text));
  if (load !== undefined && !isUnit('force', answers.loadUnit ?? layout.loadUnit)) {
    questions.push({ kind: 'load-unit', example: shownLine(load) });
  }
  const depth = cells('depth').find((text) => /\d$/.test(text));
  if (depth !== undefined && !isUnit('length', answers.depthUnit ?? layout.depthUnit)) {
    questions.push({ kind: 'depth-unit', example: shownLine(depth) });
  }
  const dates = [...cells('stamp'), ...cells('date')].filter(isOpenDate);
  if (dates[0] !== undefined && answers.dayOrder === undefined) {
    questions.push({ kind: 'day-order', example: shownLine(dates[0]) });
  }
  return questions;
}

function isUnit(quantity: 'force' | 'length', text: string | null | undefined): boolean {
  if (text === null || text === undefined) return false;
  try {
    return readQuantity(quantity, '1', text).ok;
  } catch {
    return false;
  }
}

/** Whether a date reads differently with day and month the other way round. */
function isOpenDate(text: string): boolean {
  const parts = new StampParts();
  if (!readStamp(text, 0, text.length, parts)) return false;
  return (parts.style === 'slash' || parts.style === 'dots') && parts.month !== parts.day;
}
