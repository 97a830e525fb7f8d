import { randomBytes } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { ReadingColumns } from '@/lib/exchange/reading-columns';
import type { ReadingFileReport, ReadingFileResult } from '@/lib/exchange/reading-file-result';
import type { LayoutAnswers, LayoutQuestion } from '@/lib/exchange/reading-layout';
import type { Instant } from '@/lib/units/instant';

/** What an import of a logger's file is at. */
export type ImportStage =
  | { readonly name: 'receiving'; readonly receivedBytes: number }
  | { readonly name: 'reading'; readonly readBytes: number; readonly lines: number }
  | { readonly name: 'asks'; readonly report: ReadingFileReport; readonly questions: readonly LayoutQuestion[] }
  | {
      readonly name: 'ready';
      readonly report: ReadingFileReport;
      readonly earlier: EarlierImport | null;
      /** Why the last try to take it in was refused, and beside which field to say it. */
      readonly refusal: { readonly message: string; readonly field: string | null } | null;
    }
  | { readonly name: 'unreadable'; readonly result: Extract<ReadingFileResult, { state: 'unreadable' }> }
  | { readonly name: 'writing'; readonly written: number; readonly total: number }
  | { readonly name: 'done'; readonly outcome: ImportOutcome }
  | { readonly name: 'failed'; readonly message: string };

/** The same file, taken in before. */
interface EarlierImport {
  readonly sensorName: string;
  readonly importedAt: Instant;
}

/** What an import came to: added + known + conflicts = readings of the file. */
export interface ImportOutcome {
  readonly sensorName: string;
  readonly added: number;
  readonly known: number;
  readonly conflicts: number;
  readonly firstConflicts: readonly { readonly at: Instant; readonly keptC: number; readonly sentC: number }[];
  /** Whether the cure clocks run on this sensor's readings. */
  readonly rulesClocks: boolean;
}

/** One import, from the first byte to the last row. It lives in this process; a restart forgets it and its file. */
export interface ReadingImportJob {
  readonly id: string;
  readonly fileName: string;
  readonly filePath: string;
  readonly startedAt: Instant;
  fileBytes: number;
  fileHash: string;
  answers: LayoutAnswers;
  stage: ImportStage;
  /** Kept from reading to writing, for the newest jobs only: the file can always be read again. */
  readings: ReadingColumns | null;
  /** The reading or writing that runs; the next waits for it. */
  running: Promise<void>;
}

/** Jobs remembered at once; the oldest goes when another comes. Chosen: a shop has a handful of devices. */
const MOST_JOBS = 8;

/** Jobs whose readings are kept in memory, some 25 MB each at most. Chosen. */
const MOST_KEPT_READINGS = 2;

// Next may load this module more than once in one process; the jobs are in one place.
const shared: typeof globalThis & { lurewrightImports?: Map<string, ReadingImportJob> } = globalThis;

/** Files of an earlier process belong to nobody: they are removed when the first import of this one begins. */
function jobs(): Map<string, ReadingImportJob> {
  if (shared.lurewrightImports === undefined) {
    rmSync(folder(), { recursive: true, force: true });
    shared.lurewrightImports = new Map();
  }
  return shared.lurewrightImports;
}

function folder(): string {
  return path.resolve(process.env.DATA_DIR ?? './data', 'imports');
}

/** A new job, with a place for its file. */
export function startImportJob(fileName: string, nowAt: Instant): ReadingImportJob {
  const all = jobs();
  mkdirSync(folder(), { recursive: true, mode: 0o700 });
  for (const job of [...all.values()].slice(0, Math.max(0, all.size - MOST_JOBS + 1))) {
    if (!isBusy(job)) forgetImportJob(job.id);
  }
  const id = randomBytes(12).toString('hex');
  const job: ReadingImportJob = {
    id,
    fileName,
    filePath: path.join(folder(), id),
    startedAt: nowAt,
    fileBytes: 0,
    fileHash: '',
    answers: {},
    stage: { name: 'receiving', receivedBytes: 0 },
    readings: null,
    running: Promise.resolve(),
  };
  all.set(id, job);
  return job;
}

export function findImportJob(id: string): ReadingImportJob | null {
  return jobs().get(id) ?? null;
}

/** Drops a job and its file. */
export function forgetImportJob(id: string): void {
  const job = jobs().get(id);
  if (job === undefined) return;
  jobs().delete(id);
  rmSync(job.filePath, { force: true });
}

/** Keeps the readings of a job until they are written, and lets those of older jobs go. */
export function keepReadings(job: ReadingImportJob, readings: ReadingColumns | null): void {
  job.readings = readings;
  const keepers = [...jobs().values()].filter((other) => other.readings !== null);
  for (const other of keepers.slice(0, Math.max(0, keepers.length - MOST_KEPT_READINGS))) {
    if (other !== job) other.readings = null;
  }
}

/** Whether a job is receiving, reading or writing just now. */
export function isBusy(job: ReadingImportJob): boolean {
  const { name } = job.stage;
  return name === 'receiving' || name === 'reading' || name === 'writing';
}
