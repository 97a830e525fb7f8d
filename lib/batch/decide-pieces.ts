import type { BatchState, PieceState } from '@/lib/batch/batch-state';
import type { ActionWarning, Decision, NotYetGroup } from '@/lib/batch/decision';
import { refused } from '@/lib/batch/decision';
import type { KnownBatch, NotJudged, OperationStatus, WaitingFor } from '@/lib/batch/evaluation';
import { operationStatus } from '@/lib/batch/operation-status';
import type { Instant } from '@/lib/units/instant';

/** The refused pieces and the rest of those asked for, each once and rising. */
export function refusedPieces(
  refusedOnes: readonly number[],
  asked: readonly number[],
): { readonly pieces: readonly number[]; readonly otherPieces: readonly number[] } {
  const pieces = rising(refusedOnes);
  const out = new Set(pieces);
  return { pieces, otherPieces: rising(asked.filter((number) => !out.has(number))) };
}

/** The refusal of pieces that are not there, or scrapped, or of no pieces at all; null when there is none. */
export function unknownOrScrapped(state: BatchState, asked: readonly number[]): Decision | null {
  if (asked.length === 0) return refused({ code: 'no-pieces' });
  const unknown = asked.filter((number) => state.pieces[number - 1] === undefined);
  if (unknown.length > 0) {
    return refused({ code: 'unknown-pieces', quantity: state.pieces.length, ...refusedPieces(unknown, asked) });
  }
  const scrapped = asked.flatMap((number) => state.pieces[number - 1]?.scrapped ?? []);
  if (scrapped.length === 0) return null;
  const numbers = asked.filter((number) => state.pieces[number - 1]?.scrapped != null);
  const bySeqs = rising(scrapped.map(({ seq }) => seq));
  return refused({ code: 'scrapped-pieces', bySeqs, ...refusedPieces(numbers, asked) });
}

/**
 * Whether the needs of an operation are met on pieces at an instant. `asked` are the numbers of all pieces of the
 * action, known and live. One refusal is given, for what is to be dealt with first.
 */
export function decideNeeds(
  batch: KnownBatch,
  operationIndex: number,
  asked: readonly number[],
  at: Instant,
): Decision {
  const operationId = batch.plan.operations[operationIndex]?.id ?? '';
  const found = new Map<OperationStatus['kind'], { readonly piece: number; readonly status: OperationStatus }[]>();
  for (const number of rising(asked)) {
    const piece = batch.state.pieces[number - 1];
    if (piece === undefined) continue;
    const status = operationStatus(batch, piece, operationIndex, at);
    const same = found.get(status.kind) ?? [];
    same.push({ piece: number, status });
    found.set(status.kind, same);
  }
  // Otherwise right are only those pieces that nothing at all stands against.
  const free = new Set([...(found.get('ready') ?? []), ...(found.get('not-judged') ?? [])].map(({ piece }) => piece));
  const refusal = (entries: readonly { readonly piece: number }[]) => ({
    operationId,
    pieces: entries.map(({ piece }) => piece),
    otherPieces: [...free].sort((a, b) => a - b),
  });
  const blocked = found.get('blocked') ?? [];
  if (blocked.length > 0) {
    const byOperationIds = blocked.flatMap(({ status }) => (status.kind === 'blocked' ? status.byOperationIds : []));
    return refused({ code: 'blocked', byOperationIds: [...new Set(byOperationIds)], ...refusal(blocked) });
  }
  const waits = found.get('waits') ?? [];
  if (waits.length > 0) return refused({ code: 'not-yet', groups: notYetGroups(waits), ...refusal(waits) });
  const closed = found.get('window-closed') ?? [];
  const first = firstClosed(closed.map(({ status }) => status));
  if (first !== null) {
    const { operationId: filmOperationId, closedAt, remedy } = first;
    return refused({ code: 'window-closed', filmOperationId, closedAt, remedy, ...refusal(closed) });
  }
  return { ok: true, warnings: notJudgedWarnings(found.get('not-judged') ?? []) };
}

type Closed = Extract<OperationStatus, { kind: 'window-closed' }>;

function firstClosed(statuses: readonly OperationStatus[]): Closed | null {
  let first: Closed | null = null;
  for (const status of statuses) {
    if (status.kind === 'window-closed' && (first === null || status.closedAt < first.closedAt)) first = status;
  }
  return first;
}

type StatusOfPiece = { readonly piece: number; readonly status: OperationStatus };

function notYetGroups(waits: readonly StatusOfPiece[]): readonly NotYetGroup[] {
  const groups = new Map<string, { readonly waiting: WaitingFor; readonly pieces: number[] }>();
  for (const { piece, status } of waits) {
    if (status.kind !== 'waits') continue;
    const key = JSON.stringify(status.waiting);
    const group = groups.get(key) ?? { waiting: status.waiting, pieces: [] };
    group.pieces.push(piece);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function notJudgedWarnings(unjudged: readonly StatusOfPiece[]): readonly ActionWarning[] {
  const groups = new Map<string, { readonly missing: NotJudged; readonly pieces: number[] }>();
  for (const { piece, status } of unjudged) {
    if (status.kind !== 'not-judged') continue;
    const key = JSON.stringify(status.missing);
    const group = groups.get(key) ?? { missing: status.missing, pieces: [] };
    group.pieces.push(piece);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ missing, pieces }) => ({ code: 'not-judged', pieces, missing }));
}

/** Known pieces of these numbers, each once and rising. */
export function piecesOf(state: BatchState, numbers: readonly number[]): readonly PieceState[] {
  return rising(numbers).flatMap((number) => state.pieces[number - 1] ?? []);
}

/** Each number once, rising. */
export function rising(numbers: readonly number[]): readonly number[] {
  return [...new Set(numbers)].sort((a, b) => a - b);
}
