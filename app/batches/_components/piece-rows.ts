import type { BenchEntry } from '@/app/_server/bench';
import type { PieceOperation, PieceState } from '@/lib/batch/batch-state';

/** Where pieces stand on one operation. */
export interface GridCell {
  readonly kind: 'done' | 'part' | 'ready' | 'waits' | 'window-closed' | 'not-judged' | 'blocked' | 'none';
  /** Some joint or the coat came after the lower end of a pot life. */
  readonly isLate: boolean;
  /** Mixes used on it, by number. */
  readonly mixNumbers: readonly number[];
}

/** Neighbouring pieces that stand alike on every operation. */
export interface GridRow {
  readonly from: number;
  readonly to: number;
  /** Null for pieces that are not scrapped. */
  readonly scrapReason: string | null;
  readonly cells: readonly GridCell[];
}

/** The pieces of a batch against its operations, with neighbours that stand alike as one row. */
export function pieceRows({ batch }: Pick<BenchEntry, 'batch'>): GridRow[] {
  const { state, evaluation } = batch;
  const mixNumbers = new Map(state.mixes.map((mix) => [mix.mixId, mix.number]));
  const statuses = new Map<string, GridCell['kind']>();
  for (const { operationId, pieces, status } of evaluation.groups) {
    for (const piece of pieces) statuses.set(`${piece} ${operationId}`, status.kind);
  }
  const rows: { row: GridRow; key: string }[] = [];
  for (const piece of state.pieces) {
    const cells = piece.operations.map((operation) => cellOf(piece, operation, statuses, mixNumbers));
    const scrapReason = piece.scrapped?.reason ?? null;
    const key = JSON.stringify([cells, scrapReason]);
    const last = rows.at(-1);
    if (last !== undefined && last.key === key) last.row = { ...last.row, to: piece.number };
    else rows.push({ key, row: { from: piece.number, to: piece.number, scrapReason, cells } });
  }
  return rows.map(({ row }) => row);
}

function cellOf(
  piece: PieceState,
  operation: PieceOperation,
  statuses: ReadonlyMap<string, GridCell['kind']>,
  mixNumbers: ReadonlyMap<string, number>,
): GridCell {
  const settings = [...operation.joints.map((joint) => joint.set), operation.coat].filter((set) => set !== null);
  const numbers = new Set(settings.flatMap(({ mixId }) => mixNumbers.get(mixId) ?? []));
  return {
    kind: kindOf(piece, operation, statuses),
    isLate: settings.some((set) => set.late),
    mixNumbers: [...numbers].sort((a, b) => a - b),
  };
}

function kindOf(
  piece: PieceState,
  operation: PieceOperation,
  statuses: ReadonlyMap<string, GridCell['kind']>,
): GridCell['kind'] {
  switch (operation.status) {
    case 'done':
      return 'done';
    case 'part-set':
      return 'part';
    case 'open':
      return piece.scrapped === null ? (statuses.get(`${piece.number} ${operation.operationId}`) ?? 'blocked') : 'none';
  }
}
