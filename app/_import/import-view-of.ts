import type { ImportOutcome, ImportStage, ReadingImportJob } from '@/app/_server/reading-imports';
import type { UnreadableCode } from '@/lib/exchange/reading-file-result';
import { REFUSAL_REASONS } from '@/lib/exchange/row-reader';
import { dateClockText } from '@/lib/units/format-instant';
import { temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { ShopSettings } from '@/prisma/data/shop';
import type { ImportView, PreviewView } from './import-view';
import { noteWords } from './note-words';
import { questionView, settingViews } from './question-words';
import { countWords, numberWords, REASON_WORDS, understoodWords } from './understood-words';

const UNREADABLE_WORDS: { readonly [C in UnreadableCode]: string } = {
  empty: 'This file is empty. Let the logger write it again, or choose another.',
  'no-rows':
    'No rows with a time and a temperature were found. Choose the text file (CSV) that the logger exports, not a spreadsheet or a picture of it.',
  'no-time': 'No column with the time was found. Export the log with date and time in each row.',
  'no-temperature': 'No column with a temperature was found. Export the log with the temperature in each row.',
  'no-reading': 'Not one row holds a reading that can be used. Below are the first that were refused.',
  'too-many-rows':
    'This file has more than 1,000,000 rows. Cut it into parts by month or year, and import them one by one.',
};

const NOTHING = { progress: null, preview: null, questions: [], lines: [], fieldErrors: {} } as const;

/** What the page shows of a job that runs. Needs nothing of the database, which may be busy with this very job. */
export function runningView(job: ReadingImportJob): ImportView | null {
  const { id, fileName, stage } = job;
  const base = { ...NOTHING, id, fileName, stage: stage.name };
  switch (stage.name) {
    case 'receiving':
      return { ...base, message: `Received ${megabytes(stage.receivedBytes)}.` };
    case 'reading': {
      const message = `Read ${numberWords(stage.lines)} lines.`;
      return { ...base, message, progress: share(stage.readBytes, job.fileBytes) };
    }
    case 'writing': {
      const message = `Wrote ${numberWords(stage.written)} of ${numberWords(stage.total)} readings.`;
      return { ...base, message, progress: share(stage.written, stage.total) };
    }
    default:
      return null;
  }
}

/** What the page shows of a job at this moment. */
export function importViewOf(job: ReadingImportJob, shop: ShopSettings, nowAt: Instant): ImportView {
  const { id, fileName, stage } = job;
  const base = { ...NOTHING, id, fileName, stage: stage.name };
  switch (stage.name) {
    case 'receiving':
    case 'reading':
    case 'writing':
      return runningView(job) ?? { ...base, message: '' };
    case 'asks': {
      const questions = stage.questions.map((question) => questionView(question, wallText));
      const message = 'Something has to be answered before this file can be read.';
      return { ...base, message, questions, preview: previewView(stage, shop, nowAt) };
    }
    case 'ready': {
      const { refusal } = stage;
      const preview = previewView(stage, shop, nowAt);
      if (refusal === null) return { ...base, message: readyMessage(stage, shop), preview };
      const fieldErrors = refusal.field === null ? {} : { [refusal.field]: refusal.message };
      return { ...base, message: `Nothing was kept yet. ${refusal.message}`, preview, fieldErrors };
    }
    case 'unreadable': {
      const { code, firstLines, refusedRows } = stage.result;
      const refused = refusedRows
        .slice(0, 20)
        .map(({ line, reason, text }) => `${line}: ${text} (${REASON_WORDS[reason]})`);
      return { ...base, message: UNREADABLE_WORDS[code], lines: refused.length > 0 ? refused : firstLines };
    }
    case 'done':
      return { ...base, message: doneMessage(stage.outcome), lines: conflictLines(stage.outcome, shop) };
    case 'failed':
      return { ...base, message: stage.message };
  }
}

function readyMessage(stage: Extract<ImportStage, { name: 'ready' }>, shop: ShopSettings): string {
  const count = numberWords(stage.report.counts.accepted);
  if (stage.earlier === null) return `${count} readings can be taken in. Nothing is kept yet.`;
  const { sensorName, importedAt } = stage.earlier;
  return `This very file was taken in for ${sensorName} on ${dateClockText(importedAt, shop.timeZone)}. Taking it in again does no harm: what is there stays as it is.`;
}

function doneMessage({ sensorName, added, known, conflicts, rulesClocks }: ImportOutcome): string {
  const said = [
    added > 0
      ? `${numberWords(added)} readings of ${sensorName} were taken in.`
      : 'Nothing new: all of it was there already.',
  ];
  if (added > 0 && known > 0) said.push(`${numberWords(known)} were there already.`);
  if (conflicts > 0) said.push(`${numberWords(conflicts)} differ from readings that are kept; the first ones stay.`);
  if (added > 0) {
    said.push(
      rulesClocks
        ? 'Every clock is read anew with them.'
        : 'The cure clocks run on something else: choose this sensor for them under Temperature if it hangs where the lures cure.',
    );
  }
  return said.join(' ');
}

function conflictLines({ firstConflicts }: ImportOutcome, shop: ShopSettings): string[] {
  const unit = shop.temperatureUnit;
  return firstConflicts.map(({ at, keptC, sentC }) => {
    return `${dateClockText(at, shop.timeZone)}: ${temperatureText(keptC, unit)} is kept, the file has ${temperatureText(sentC, unit)}`;
  });
}

function previewView(
  stage: Extract<ImportStage, { name: 'asks' | 'ready' }>,
  shop: ShopSettings,
  nowAt: Instant,
): PreviewView {
  const { report } = stage;
  const isUnitOpen = stage.name === 'asks' && stage.questions.some(({ kind }) => kind === 'unit');
  const refusedBy = REFUSAL_REASONS.filter((reason) => report.refusedBy[reason] > 0);
  return {
    understood: understoodWords(report.layout, isUnitOpen),
    counts: countWords(report),
    firstRows: report.firstRows.map(({ line, text, at, temperatureC, humidityPct }) => {
      const temperature = temperatureText(temperatureC, shop.temperatureUnit);
      return {
        line,
        text,
        at: secondsText(at, shop.timeZone),
        temperature: humidityPct === null ? temperature : `${temperature}, ${Math.round(humidityPct)} %`,
      };
    }),
    refusedBy: refusedBy.map((reason) => ({ reason: REASON_WORDS[reason], count: report.refusedBy[reason] })),
    refused: report.refusedRows.map(({ line, reason, text }) => ({ line, reason: REASON_WORDS[reason], text })),
    notes: noteWords(report, shop, nowAt),
    settings: settingViews(report.layout),
  };
}

/** An instant to the second, with the zone's part of the day: what a maker compares with the line beside it. */
function secondsText(at: Instant, timeZone: string): string {
  const seconds = new Date(at).getUTCSeconds();
  const text = dateClockText(at, timeZone);
  return seconds === 0 ? text : `${text}, ${seconds} s`;
}

/** A wall time given as if it were UTC. */
function wallText(wallMs: number): string {
  return dateClockText(wallMs, 'UTC');
}

function megabytes(bytes: number): string {
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

function share(part: number, whole: number): number | null {
  return whole > 0 ? Math.min(1, part / whole) : null;
}
