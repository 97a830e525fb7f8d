import type { BatchWords } from '@/lib/batch/batch-words';
import { listText } from '@/lib/batch/batch-words';
import type { Urgency } from '@/lib/batch/bench-entries';
import type { ReleaseBand, UnjudgedCode } from '@/lib/batch/cure-reader';
import type { NotJudged, OperationStatus, WaitingFor } from '@/lib/batch/evaluation';
import type { Milestone } from '@/lib/cure/adhesive-sheet';

/** What to do with a film whose recoat window has closed, when its sheet does not say. Common practice, no source. */
export const COMMON_REMEDY = 'wash, dry, sand';

/** A milestone as it is spoken of: `not yet at paint`. */
export function milestoneText(milestone: Milestone | 'done'): string {
  switch (milestone) {
    case 'done':
      return 'done';
    case 'handle':
      return 'handling';
    case 'sand':
      return 'sanding';
    case 'recoat-from':
      return 'recoating';
    case 'recoat-by':
      return 'the end of recoating';
    case 'paint':
      return 'paint';
    case 'pull-test':
      return 'pull test';
    case 'ship':
      return 'shipping';
  }
}

/** `about 19:40, between 18:55 and 20:30`; what lies beyond the temperature in view is said so. */
export function bandText({ earliestAt, centralAt, latestAt }: ReleaseBand, words: BatchWords): string {
  if (earliestAt === null) return 'not in sight at these temperatures';
  if (latestAt === null) {
    const about = centralAt === null ? '' : `about ${words.time(centralAt)}, `;
    return `${about}not before ${words.time(earliestAt)}, with no sure end in sight at these temperatures`;
  }
  if (earliestAt === latestAt) return words.time(latestAt);
  const about = centralAt === null ? '' : `about ${words.time(centralAt)}, `;
  return `${about}between ${words.time(earliestAt)} and ${words.time(latestAt)}`;
}

/** When something that waits may go on: `from 21:10`. */
export function allowedText({ latestAt }: ReleaseBand, words: BatchWords): string {
  return latestAt === null ? 'not in sight at these temperatures' : `from ${words.time(latestAt)}`;
}

/** `not yet at paint after Clear coat: from 21:10 (about 20:20, between 19:40 and 21:10)`. */
export function waitingText({ operationId, milestone, band }: WaitingFor, words: BatchWords): string {
  const operation = words.operation(operationId);
  if (milestone === 'done') return `${operation} is recorded as done only ${allowedText(band, words)}`;
  return `not yet at ${milestoneText(milestone)} after ${operation}: ${allowedText(band, words)} (${bandText(band, words)})`;
}

/** Why nothing can be said of a cure. */
export function notJudgedText({ operationId, milestone, code }: NotJudged, words: BatchWords): string {
  return `${milestoneText(milestone)} after ${words.operation(operationId)} cannot be judged: ${unjudgedText(code)}`;
}

/** Why no release can be told. */
export function unjudgedText(code: UnjudgedCode): string {
  switch (code) {
    case 'not-on-sheet':
      return 'the data sheet entered gives no hours for it';
    case 'log-has-a-gap':
      return 'the temperature log has no readings for most of the time';
    case 'no-temperature':
      return 'no temperature is known for the time of the cure';
    case 'no-clock':
      return 'no cure is recorded for it';
    case 'bad-sheet':
      return 'the figures of the data sheet cannot be computed with';
  }
}

/** What stands between pieces and an operation. */
export function statusText(status: OperationStatus, words: BatchWords): string {
  switch (status.kind) {
    case 'ready':
      return status.closesAt === null ? 'can be done now' : `can be done now, until ${words.time(status.closesAt)}`;
    case 'waits':
      return waitingText(status.waiting, words);
    case 'window-closed':
      return windowClosedText(status, words);
    case 'not-judged':
      return notJudgedText(status.missing, words);
    case 'blocked':
      return `waits for ${listText(status.byOperationIds.map((id) => words.operation(id)))}`;
  }
}

/** The recoat window that closed, and the remedy. */
export function windowClosedText(
  closed: Pick<Extract<OperationStatus, { kind: 'window-closed' }>, 'operationId' | 'closedAt' | 'remedy'>,
  words: BatchWords,
): string {
  const film = words.operation(closed.operationId);
  return `the recoat window of ${film} closed at ${words.time(closed.closedAt)}: ${closed.remedy ?? COMMON_REMEDY} first`;
}

/** Why an action stands where it does on the Bench. `day` prints a calendar day. */
export function urgencyText(urgency: Urgency, words: BatchWords, day: (dueOn: string) => string): string {
  switch (urgency.kind) {
    case 'window-closing':
      return `recoat window closes ${words.time(urgency.closesAt)}`;
    case 'due':
      return `due ${day(urgency.dueOn)}`;
    case 'waiting':
      return `waiting since ${words.time(urgency.sinceAt)}`;
  }
}
