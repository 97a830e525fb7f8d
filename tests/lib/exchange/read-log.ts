import { ReadingFile } from '@/lib/exchange/reading-file';
import type { ReadingFileResult } from '@/lib/exchange/reading-file-result';
import type { LayoutAnswers } from '@/lib/exchange/reading-layout';

export interface ReadLogOptions {
  readonly timeZone?: string;
  readonly temperatureUnit?: 'C' | 'F';
  readonly answers?: LayoutAnswers;
  /** Bytes given at once; cuts lines, characters and line ends in two. */
  readonly chunk?: number;
  readonly maxRows?: number;
}

/** Reads a logger file as the shop in Chicago would, chunk by chunk. */
export function readLog(file: string | Uint8Array, options: ReadLogOptions = {}): ReadingFileResult {
  const { timeZone = 'America/Chicago', temperatureUnit = 'C', answers = {}, chunk = 7, maxRows = 1_000_000 } = options;
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const reader = new ReadingFile({ timeZone, temperatureUnit, answers }, maxRows);
  for (let at = 0; at < bytes.length; at += chunk) if (!reader.push(bytes.subarray(at, at + chunk))) break;
  return reader.finish();
}

/** Instants and temperatures of a file that is expected to be read without a question. */
export function readingsOf(file: string | Uint8Array, options: ReadLogOptions = {}): [string, number][] {
  const result = readLog(file, options);
  if (result.state !== 'read') throw new Error(`not read: ${JSON.stringify(result)}`);
  const { at, temperatureC } = result.readings;
  return Array.from(at, (instant, row) => [shortIso(instant), temperatureC[row] ?? Number.NaN]);
}

/** What a file that cannot be understood outright asks for. */
export function questionsOf(file: string | Uint8Array, options: ReadLogOptions = {}): string[] {
  const result = readLog(file, options);
  if (result.state !== 'asks') throw new Error(`did not ask: ${JSON.stringify(result)}`);
  return result.questions.map(({ kind }) => kind);
}

/** `2026-02-11T00:00Z`, with seconds only where there are some. */
function shortIso(at: number): string {
  return new Date(at)
    .toISOString()
    .replace(/\.000Z$/, 'Z')
    .replace(/:00Z$/, 'Z');
}
