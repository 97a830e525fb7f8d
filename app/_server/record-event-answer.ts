import 'server-only';
import type { RefusalCode } from '@/lib/batch/decision';
import { conflictText } from '@/lib/batch/describe-event';
import { refusalText, warningText } from '@/lib/batch/describe-refusal';
import type { RecordEventAnswer } from '@/lib/contracts/record-event-answer';
import type { Instant } from '@/lib/units/instant';
import type { ShopSettings } from '@/prisma/data/shop';
import type { RecordEventResult } from '../_commands/record-event';
import { batchWords } from './batch-words';

type Refused = Extract<RecordEventResult, { ok: false }>;

/** An answer with the HTTP status it goes out with. */
export interface AnswerWithStatus {
  readonly status: number;
  readonly answer: RecordEventAnswer;
}

/** What went on in the batch in the meantime is a conflict; what could never have been right is a bad request. */
const REFUSAL_STATUS: { readonly [C in RefusalCode]: 409 | 422 } = {
  'bad-instant': 422,
  'in-future': 422,
  'not-opened': 409,
  'already-opened': 409,
  'before-opening': 422,
  'bad-quantity': 422,
  'batch-finished': 409,
  'not-finished': 409,
  'open-pieces': 409,
  'held-pieces': 409,
  'not-quarantined': 409,
  'unknown-operation': 422,
  'wrong-operation-kind': 422,
  'no-pieces': 422,
  'unknown-pieces': 422,
  'unknown-anchor': 422,
  'scrapped-pieces': 409,
  'already-done': 409,
  blocked: 409,
  'not-yet': 409,
  'window-closed': 409,
  'not-done': 409,
  'unknown-mix': 409,
  'duplicate-mix': 409,
  'mix-number-taken': 409,
  'mix-closed': 409,
  'before-mix': 422,
  'closed-before-last-use': 409,
  'bad-figure': 422,
  'unknown-event': 422,
  'cannot-correct-opening': 422,
  'already-corrected': 409,
  'correction-only-undone': 422,
  'mix-id-changed': 422,
  'mix-in-use': 409,
  'others-depend': 409,
};

const OTHER_STATUS: { readonly [C in Exclude<Refused['code'], 'refused'>]: number } = {
  'unknown-batch': 404,
  'unknown-person': 422,
  'key-reused': 409,
  'too-old': 422,
  'unknown-material': 422,
  'no-sheet': 422,
  'unknown-lots': 422,
  'mix-of-other-batch': 409,
};

/** The result of recording an action, in words and with its HTTP status. `nameOf` knows people by id. */
export function recordEventAnswer(
  result: RecordEventResult,
  shop: ShopSettings,
  nowAt: Instant,
  nameOf: (personId: string) => string | null,
): AnswerWithStatus {
  if (result.ok) {
    const words = batchWords(result.batch, shop, nowAt);
    const warnings = result.warnings.map((warning) => warningText(warning, words));
    return {
      status: result.isRepeat ? 200 : 201,
      answer: { ok: true, seq: result.event.seq, isRepeat: result.isRepeat, warnings },
    };
  }
  if (result.code !== 'refused') return refusal(OTHER_STATUS[result.code], result.code, otherText(result));
  const words = batchWords(result.batch, shop, nowAt);
  const text = refusalText(result.refusal, words);
  const status = REFUSAL_STATUS[result.refusal.code];
  const { conflict } = result;
  if (conflict === null) return refusal(status, result.refusal.code, text);
  const person = conflict.personId === null ? null : nameOf(conflict.personId);
  return refusal(409, result.refusal.code, conflictText(conflict, person, words), [text]);
}

/** A refusal with its status. */
export function refusal(
  status: number,
  code: string,
  message: string,
  details: readonly string[] = [],
): AnswerWithStatus {
  return { status, answer: { ok: false, code, message, details } };
}

function otherText(result: Exclude<Refused, { code: 'refused' }>): string {
  switch (result.code) {
    case 'unknown-batch':
      return 'There is no such batch. It may have been removed; open Batches to see what is there.';
    case 'unknown-person':
      return 'There is no such person in the shop. Leave personId out, or name one of Shop.';
    case 'key-reused':
      return 'This key was used for another action before. Make a new key for every action.';
    case 'too-old':
      return `This happened more than ${result.days} days ago. Write it down as a note instead.`;
    case 'unknown-material':
      return 'There is no such material. Choose one of Stock.';
    case 'no-sheet':
      return `${result.materialName} has no data sheet figures yet. Enter them in Stock, then start the mix.`;
    case 'unknown-lots':
      return `These are no lots of ${result.materialName}. Choose its own lots, or none.`;
    case 'mix-of-other-batch':
      return 'This mix belongs to another batch. Make a new mixId for every mix.';
  }
}
