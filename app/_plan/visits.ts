import type { PieceState } from '@/lib/batch/batch-state';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { PlannedOperation } from '@/lib/batch/plan';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { OperationPlanning } from '@/prisma/data/operation-planning';

/** One visit of an operation: the pieces that are done in it together, and which of them are done already. */
export interface Visit {
  /** From 0; the same pieces belong to it for as long as the batch lives. */
  readonly number: number;
  readonly open: readonly PieceState[];
  readonly done: readonly PieceState[];
}

/**
 * An operation of a batch in visits. What is mixed is split so that one cup lasts: by the most pieces that the planning
 * says, else by the shortest pot life on the sheet. Scrapped pieces are left out.
 */
export function visitsOf(batch: KnownBatch, operationIndex: number, most: number): readonly Visit[] {
  const visits = new Map<number, { open: PieceState[]; done: PieceState[] }>();
  for (const piece of batch.state.pieces) {
    if (piece.scrapped !== null) continue;
    const number = Math.floor((piece.number - 1) / most);
    const visit = visits.get(number) ?? { open: [], done: [] };
    visits.set(number, visit);
    (piece.operations[operationIndex]?.doneAt == null ? visit.open : visit.done).push(piece);
  }
  return [...visits].map(([number, visit]) => ({ number, ...visit }));
}

/** Most pieces of one visit, at least 1. */
export function mostPieces(
  operation: PlannedOperation,
  planning: OperationPlanning | undefined,
  sheet: AdhesiveSheet | null,
): number {
  const said = planning?.mostPieces ?? null;
  if (said !== null) return said;
  const potLives = operation.kind === 'work' ? [] : (sheet?.potLife ?? []);
  const shortest = Math.min(...potLives.map(({ minutes }) => minutes));
  if (!Number.isFinite(shortest) || operation.attendedMinutes <= 0) return Number.MAX_SAFE_INTEGER;
  return Math.max(1, Math.floor(shortest / operation.attendedMinutes));
}
