import type { BatchWords } from '@/lib/batch/batch-words';
import { capital, listText, pieceRanges, pieceText } from '@/lib/batch/batch-words';
import type { ActionWarning, Refusal } from '@/lib/batch/decision';
import { notJudgedText, waitingText, windowClosedText } from '@/lib/batch/describe-status';

/** Why an action was not taken in, and what to do. One sentence for each group of pieces. */
export function refusalText(refusal: Refusal, words: BatchWords): string {
  switch (refusal.code) {
    case 'bad-instant':
      return 'The time is not a time. Choose when it happened.';
    case 'in-future':
      return `${words.time(refusal.at)} is still to come. Choose when it happened, or check the clock of this device.`;
    case 'not-opened':
      return 'The batch is not opened yet.';
    case 'already-opened':
      return 'The batch is opened already.';
    case 'before-opening':
      return `The batch was opened at ${words.time(refusal.openedAt)}. Choose a time after that.`;
    case 'bad-quantity':
      return 'The number of pieces differs from the plan of the batch.';
    case 'batch-finished':
      return `The batch was finished at ${words.time(refusal.finishedAt)}. Reopen it first.`;
    case 'not-finished':
      return 'The batch is open already.';
    case 'open-pieces':
      return `${countedPieces(refusal.pieces)} with operations open. Do or scrap them before finishing the batch.`;
    case 'held-pieces':
      return `${countedPieces(refusal.pieces)} held for a mix in doubt. Test, redo or scrap them before finishing the batch.`;
    case 'not-quarantined':
      return `${capital(words.mix(refusal.mixId))} is not held. Reload the page.`;
    case 'unknown-operation':
      return 'The route of this batch has no such operation. Reload the page.';
    case 'wrong-operation-kind':
      return `${words.operation(refusal.operationId)} is recorded ${recordedHow(refusal.recordedAs)}.`;
    case 'no-pieces':
      return 'Choose at least one piece.';
    case 'unknown-pieces':
      return `The batch has pieces 1 to ${refusal.quantity}; it has no ${pieceText(refusal.pieces)}.`;
    case 'unknown-anchor':
      return `This operation does not set ${listText(refusal.anchorIds.map((id) => words.anchor(id)))}.`;
    case 'scrapped-pieces':
      return `${countedPieces(refusal.pieces)} scrapped. Leave them out.`;
    case 'already-done':
      return `${words.operation(refusal.operationId)} is recorded already on ${pieceText(refusal.pieces)}. Leave them out.`;
    case 'blocked': {
      const earlier = listText(refusal.byOperationIds.map((id) => words.operation(id)));
      return `${countedPieces(refusal.pieces)} not ready for ${words.operation(refusal.operationId)}: ${earlier} first.`;
    }
    case 'not-yet':
      return refusal.groups
        .map((group) => `${countedPieces(group.pieces)} ${waitingText(group.waiting, words)}.`)
        .join(' ');
    case 'window-closed': {
      const { filmOperationId: operationId, closedAt, remedy } = refusal;
      return `${countedPieces(refusal.pieces)}: ${windowClosedText({ operationId, closedAt, remedy }, words)}.`;
    }
    case 'not-done':
      return `${words.operation(refusal.operationId)} was not done at that time on ${pieceText(refusal.pieces)}.`;
    case 'unknown-mix':
      return 'This batch has no such mix. Reload the page.';
    case 'duplicate-mix':
      return 'This mix was started already.';
    case 'mix-number-taken':
      return `There is a mix ${refusal.number} already; the next is mix ${refusal.nextNumber}.`;
    case 'mix-closed':
      return `${capital(words.mix(refusal.mixId))} was closed at ${words.time(refusal.closedAt)}. Start a new mix, or give a time before that.`;
    case 'before-mix':
      return `${capital(words.mix(refusal.mixId))} was mixed at ${words.time(refusal.mixedAt)}. Choose a time after that.`;
    case 'closed-before-last-use':
      return `${capital(words.mix(refusal.mixId))} was last used at ${words.time(refusal.lastUsedAt)}. Choose a time after that.`;
    case 'bad-figure':
      return `Give the ${figureText(refusal.figure)} of the mix.`;
    case 'unknown-event':
      return `There is no entry ${refusal.seq} to correct.`;
    case 'cannot-correct-opening':
      return 'The opening of a batch cannot be corrected.';
    case 'already-corrected':
      return `Entry ${refusal.seq} is corrected already by entry ${refusal.bySeq}. Take that one back first.`;
    case 'correction-only-undone':
      return `Entry ${refusal.seq} is a correction. Take it back, then correct the entry it was about.`;
    case 'mix-id-changed':
      return `A correction of ${words.mix(refusal.mixId)} must stay the same mix.`;
    case 'mix-in-use':
      return `${capital(words.mix(refusal.mixId))} is used by ${entriesText(refusal.bySeqs)}. Correct those first.`;
    case 'others-depend':
      return `Later on ${entriesText(refusal.bySeqs)} would make no sense. Correct those first.`;
  }
}

/** What the maker is told about an action that was taken in. */
export function warningText(warning: ActionWarning, words: BatchWords): string {
  switch (warning.code) {
    case 'late':
      return `Recorded as late: the pot life of ${words.mix(warning.mixId)} ran to ${words.time(warning.lowerAt)}.`;
    case 'pot-life-not-judged':
      return `The pot life of ${words.mix(warning.mixId)} cannot be judged from its data sheet figures.`;
    case 'other-material':
      return 'The plan names another material for this operation.';
    case 'over-mass-limit':
      return `${words.mass(warning.massG)} is more than the ${words.mass(warning.maxMassG)} its data sheet allows in one cup: it may run hot.`;
    case 'not-judged':
      return `${countedPieces(warning.pieces)} recorded on your own judgement: ${notJudgedText(warning.missing, words)}.`;
    case 'remedy-before-sand':
      return `${countedPieces(warning.pieces)} ${waitingText(warning.waiting, words)}. Dust of a green film can sensitise: wear a mask, sand wet.`;
  }
}

/** `2 pieces (3, 7)`. */
function countedPieces(numbers: readonly number[]): string {
  return numbers.length === 1 ? `Piece ${numbers[0]}` : `${numbers.length} pieces (${pieceRanges(numbers)})`;
}

function recordedHow(how: Extract<Refusal, { code: 'wrong-operation-kind' }>['recordedAs']): string {
  switch (how) {
    case 'work':
      return 'as work on pieces, without a mix';
    case 'joints':
      return 'joint by joint, with a mix';
    case 'coat':
      return 'as applied to pieces, with a mix';
  }
}

function figureText(figure: Extract<Refusal, { code: 'bad-figure' }>['figure']): string {
  switch (figure) {
    case 'massG':
      return 'mass';
    case 'temperatureC':
      return 'temperature';
    case 'number':
      return 'number';
  }
}

function entriesText(seqs: readonly number[]): string {
  return seqs.length === 1 ? `entry ${seqs[0]}` : `entries ${pieceRanges(seqs)}`;
}
