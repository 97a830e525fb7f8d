import type { Anomaly, AnomalyCode } from '@/lib/batch/anomaly';
import type { BatchWords } from '@/lib/batch/batch-words';
import { capital, countText, listText, pieceText } from '@/lib/batch/batch-words';
import type { BatchEventBody } from '@/lib/batch/events';
import type { Conflict } from '@/lib/batch/explain-conflict';

/** One event as a plain sentence without its person and time: `Sand: done on pieces 1-12`. */
export function eventText(body: BatchEventBody, words: BatchWords): string {
  switch (body.kind) {
    case 'batch-opened':
      return `Batch opened with ${countText(body.quantity, 'piece')}`;
    case 'work-done':
      return `${words.operation(body.operationId)}: done on ${pieceText(rising(body.pieces))}`;
    case 'mix-started': {
      const cup = `${words.mass(body.massG)} of ${body.materialName} at ${words.temperature(body.temperatureC)}`;
      return `Mix ${body.number} started for ${words.operation(body.operationId)}: ${cup}`;
    }
    case 'joints-set': {
      const pieces = rising(body.joints.map(({ piece }) => piece));
      const anchors = [...new Set(body.joints.map(({ anchorId }) => words.anchor(anchorId)))];
      const joints = countText(body.joints.length, 'joint');
      return `${capital(words.mix(body.mixId))}: ${joints} set on ${pieceText(pieces)} (${listText(anchors)})`;
    }
    case 'mix-closed':
      return `${capital(words.mix(body.mixId))} closed`;
    case 'coat-applied':
      return `${capital(words.mix(body.mixId))}: applied to ${pieceText(rising(body.pieces))}`;
    case 'window-remedied':
      return `${words.operation(body.operationId)}: closed recoat window made good on ${pieceText(rising(body.pieces))}`;
    case 'pieces-scrapped':
      return `${capital(pieceText(rising(body.pieces)))} scrapped: ${body.reason}`;
    case 'mix-quarantined':
      return `${capital(words.mix(body.mixId))} held: ${body.reason}`;
    case 'pieces-cleared': {
      const note = body.note === '' ? '' : `: ${body.note}`;
      return `${capital(pieceText(rising(body.pieces)))} free again, ${body.how} (${words.mix(body.mixId)})${note}`;
    }
    case 'noted':
      return body.pieces.length === 0
        ? `Note: ${body.text}`
        : `Note on ${pieceText(rising(body.pieces))}: ${body.text}`;
    case 'corrected': {
      const { replacement } = body;
      if (replacement === null) return `Entry ${body.seq} taken back: ${body.reason}`;
      const instead = `${eventText(replacement.body, words)} (${words.time(replacement.at)})`;
      return `Entry ${body.seq} corrected: ${body.reason}. Instead: ${instead}`;
    }
    case 'batch-finished':
      return 'Batch finished';
    case 'batch-reopened':
      return 'Batch reopened';
  }
}

/** `Someone else just changed this. Ana at 19:40: Sand: done on pieces 1-12`. `person` is null when nobody was named. */
export function conflictText(conflict: Conflict, person: string | null, words: BatchWords): string {
  const who = person ?? 'Somebody';
  return `Someone else just changed this. ${who} at ${words.time(conflict.at)}: ${eventText(conflict.body, words)}`;
}

/** What is odd about an event in the history. */
export function anomalyText(anomaly: Anomaly): string {
  const about = anomaly.pieces.length === 0 ? '' : ` (${pieceText(anomaly.pieces)})`;
  return `${anomaly.applied ? 'Counted, but' : 'Not counted:'} ${anomalyReason(anomaly.code)}${about}`;
}

function anomalyReason(code: AnomalyCode): string {
  switch (code) {
    case 'unreadable':
      return 'this kind of entry is not known';
    case 'bad-instant':
      return 'its time is no time';
    case 'not-opened':
      return 'the batch was not opened yet';
    case 'already-opened':
      return 'the batch was opened already';
    case 'bad-quantity':
      return 'the number of pieces differs from the plan';
    case 'before-opening':
      return 'its time lies before the opening of the batch';
    case 'batch-finished':
      return 'the batch was finished';
    case 'not-finished':
      return 'the batch was not finished';
    case 'open-pieces':
      return 'pieces still had operations open';
    case 'unknown-operation':
      return 'the route has no such operation';
    case 'wrong-operation-kind':
      return 'this operation is not recorded in this way';
    case 'no-pieces':
      return 'it names no pieces';
    case 'unknown-pieces':
      return 'the batch has no such pieces';
    case 'unknown-anchor':
      return 'the operation does not set this anchor';
    case 'scrapped-pieces':
      return 'pieces were scrapped before';
    case 'already-done':
      return 'it was done before';
    case 'before-needs':
      return 'an earlier operation was not done at that time';
    case 'unknown-mix':
      return 'there is no such mix';
    case 'duplicate-mix':
      return 'this mix was started before';
    case 'mix-closed':
      return 'the mix was closed before';
    case 'before-mix':
      return 'its time lies before the mixing';
    case 'closed-before-last-use':
      return 'the mix was used after that time';
    case 'not-done':
      return 'the film was not on at that time';
    case 'not-quarantined':
      return 'the mix was not held at that time';
    case 'unknown-event':
      return 'there is no such earlier entry to correct';
    case 'cannot-correct-opening':
      return 'the opening of a batch cannot be corrected';
    case 'already-corrected':
      return 'the entry was corrected before';
  }
}

function rising(numbers: readonly number[]): readonly number[] {
  return [...new Set(numbers)].sort((a, b) => a - b);
}
