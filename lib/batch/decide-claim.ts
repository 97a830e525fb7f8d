import { decideMixClosing, decideMixStart } from '@/lib/batch/decide-mix';
import { decideCoat, decideJoints, decideRemedy, decideWork } from '@/lib/batch/decide-operation';
import { refusedPieces, unknownOrScrapped } from '@/lib/batch/decide-pieces';
import type { Decision } from '@/lib/batch/decision';
import { ACCEPTED, refused } from '@/lib/batch/decision';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEventBody } from '@/lib/batch/events';
import { quarantinedPieces } from '@/lib/batch/quarantined-pieces';
import type { Instant } from '@/lib/units/instant';

/** Something said to have happened that is not a correction. */
export interface Claim {
  readonly at: Instant;
  readonly body: Exclude<BatchEventBody, { kind: 'corrected' }>;
}

/**
 * Whether a claim fits the batch as it stands in `batch.state`. For a replacement, that is the batch as it stood before
 * the event `replacedSeq`, yet with its whole history: the mixes in it are not free to be used again.
 */
export function decideClaim(batch: KnownBatch, { at, body }: Claim, replacedSeq: number | null): Decision {
  const { state, plan } = batch;
  if (body.kind === 'batch-opened') {
    if (state.openedAt !== null) return refused({ code: 'already-opened' });
    return body.quantity === plan.quantity ? ACCEPTED : refused({ code: 'bad-quantity' });
  }
  if (state.openedAt === null) return refused({ code: 'not-opened' });
  if (at < state.openedAt) return refused({ code: 'before-opening', openedAt: state.openedAt });
  if (body.kind === 'noted') return unknownPieces(batch, body.pieces);
  if (body.kind === 'batch-reopened') return state.finishedAt === null ? refused({ code: 'not-finished' }) : ACCEPTED;
  if (body.kind === 'mix-quarantined') return decideQuarantine(batch, at, body.mixId);
  if (body.kind === 'pieces-cleared') return decideClearing(batch, body);
  if (state.finishedAt !== null) {
    return refused({ code: 'batch-finished', finishedAt: state.finishedAt, bySeq: state.finishedSeq ?? 0 });
  }
  switch (body.kind) {
    case 'work-done':
      return decideWork(batch, at, body);
    case 'mix-started':
      return decideMixStart(batch, body, replacedSeq);
    case 'joints-set':
      return decideJoints(batch, at, body);
    case 'coat-applied':
      return decideCoat(batch, at, body);
    case 'mix-closed':
      return decideMixClosing(batch, at, body.mixId);
    case 'window-remedied':
      return decideRemedy(batch, at, body);
    case 'pieces-scrapped':
      return unknownOrScrapped(batch.state, body.pieces) ?? ACCEPTED;
    case 'batch-finished':
      return decideFinish(batch);
  }
}

function decideQuarantine({ state }: KnownBatch, at: Instant, mixId: string): Decision {
  const mix = state.mixes.find((one) => one.mixId === mixId);
  if (mix === undefined) return refused({ code: 'unknown-mix', mixId });
  return at < mix.mixedAt ? refused({ code: 'before-mix', mixId, mixedAt: mix.mixedAt }) : ACCEPTED;
}

function decideClearing({ state }: KnownBatch, { mixId, pieces }: Extract<BatchEventBody, { kind: 'pieces-cleared' }>) {
  const mix = state.mixes.find((one) => one.mixId === mixId);
  if (mix === undefined) return refused({ code: 'unknown-mix', mixId });
  if (mix.quarantine === null) return refused({ code: 'not-quarantined', mixId });
  return unknownOrScrapped(state, pieces) ?? ACCEPTED;
}

function unknownPieces({ state }: KnownBatch, pieces: readonly number[]): Decision {
  const unknown = pieces.filter((number) => state.pieces[number - 1] === undefined);
  if (unknown.length === 0) return ACCEPTED;
  return refused({ code: 'unknown-pieces', quantity: state.pieces.length, ...refusedPieces(unknown, pieces) });
}

function decideFinish({ state }: KnownBatch): Decision {
  const live = state.pieces.filter((piece) => piece.scrapped === null);
  const open = live.filter((piece) => piece.operations.some((operation) => operation.doneAt === null));
  const numbers = (pieces: typeof live) => pieces.map((piece) => piece.number);
  const held = quarantinedPieces(state).flatMap(({ pieces }) => pieces);
  if (open.length === 0 && held.length > 0) {
    return refused({ code: 'held-pieces', ...refusedPieces(held, numbers(live)) });
  }
  if (open.length === 0) return ACCEPTED;
  return refused({ code: 'open-pieces', ...refusedPieces(numbers(open), numbers(live)) });
}
