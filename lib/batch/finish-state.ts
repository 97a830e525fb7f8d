import type { BatchDraft, DraftOperation, DraftPiece } from '@/lib/batch/batch-draft';
import type {
  BatchClock,
  BatchState,
  HistoryEntry,
  JointSetting,
  MixState,
  PieceOperation,
  PieceState,
} from '@/lib/batch/batch-state';
import type { IndexedOperation } from '@/lib/batch/plan-index';

/** The draft as plain data, with its joints and coats gathered into cure clocks. */
export function finishState(draft: BatchDraft, history: readonly HistoryEntry[]): BatchState {
  const clocks = gatherClocks(draft);
  const clockIndex = new Map(clocks.map((clock, index) => [clock.id, index]));
  return {
    openedAt: draft.openedAt,
    finishedAt: draft.finishedAt,
    finishedSeq: draft.finishedSeq,
    pieces: draft.pieces.map((piece) => finishPiece(piece, draft.index.operations, clockIndex)),
    mixes: [...draft.mixes.values()].map(({ operationIndex: _, ...mix }): MixState => mix),
    clocks,
    notes: draft.notes,
    history,
    anomalies: draft.anomalies,
    lastSeq: history.at(-1)?.event.seq ?? 0,
  };
}

function clockIdOf(setting: JointSetting): string {
  return `${setting.mixId}@${setting.at}`;
}

/** The joints or the coat of one operation on one piece that are there. */
function settingsOf(operation: DraftOperation): readonly JointSetting[] {
  if (operation.coat !== null) return [operation.coat];
  return operation.joints.filter((joint) => joint !== null);
}

interface GrowingClock {
  readonly setting: JointSetting;
  readonly pieces: number[];
  readonly anchorIds: Set<string>;
  jointCount: number;
}

function gatherClocks(draft: BatchDraft): readonly BatchClock[] {
  const growing = new Map<string, GrowingClock>();
  for (const piece of draft.pieces) {
    if (piece.scrapped !== null) continue;
    piece.operations.forEach((operation, index) => {
      const anchorIds = draft.index.operations[index]?.operation.anchorIds ?? [];
      if (operation.coat !== null) join(growing, operation.coat, piece.number, null);
      operation.joints.forEach((joint, anchor) => {
        if (joint !== null) join(growing, joint, piece.number, anchorIds[anchor] ?? null);
      });
    });
  }
  const clocks: BatchClock[] = [];
  for (const [id, { setting, pieces, anchorIds, jointCount }] of growing) {
    const mix = draft.mixes.get(setting.mixId);
    if (mix === undefined) continue;
    clocks.push({
      id,
      mixId: mix.mixId,
      mixNumber: mix.number,
      operationId: mix.operationId,
      materialName: mix.materialName,
      sheet: mix.sheet,
      mixedAt: mix.mixedAt,
      setAt: setting.at,
      pieces,
      anchorIds: [...anchorIds],
      jointCount,
      late: setting.late,
    });
  }
  return clocks.sort((a, b) => a.setAt - b.setAt || a.mixNumber - b.mixNumber || (a.id < b.id ? -1 : 1));
}

function join(growing: Map<string, GrowingClock>, setting: JointSetting, piece: number, anchorId: string | null): void {
  const id = clockIdOf(setting);
  const clock = growing.get(id) ?? { setting, pieces: [], anchorIds: new Set<string>(), jointCount: 0 };
  // Pieces come in rising order, so a piece that is there already is the last one.
  if (clock.pieces.at(-1) !== piece) clock.pieces.push(piece);
  if (anchorId !== null) {
    clock.anchorIds.add(anchorId);
    clock.jointCount++;
  }
  growing.set(id, clock);
}

function finishPiece(
  piece: DraftPiece,
  operations: readonly IndexedOperation[],
  clockIndex: ReadonlyMap<string, number>,
): PieceState {
  return {
    number: piece.number,
    scrapped: piece.scrapped,
    operations: piece.operations.map((own, index): PieceOperation => {
      const operation = operations[index]?.operation;
      const indexes: number[] = [];
      for (const setting of settingsOf(own)) {
        const found = clockIndex.get(clockIdOf(setting));
        if (found !== undefined && piece.scrapped === null && !indexes.includes(found)) indexes.push(found);
      }
      return {
        operationId: operation?.id ?? '',
        status: own.doneAt !== null ? 'done' : own.joints.some((joint) => joint !== null) ? 'part-set' : 'open',
        doneAt: own.doneAt,
        doneSeq: own.doneSeq,
        joints: own.joints.map((set, anchor) => ({ anchorId: operation?.anchorIds[anchor] ?? '', set })),
        coat: own.coat,
        remediedAt: own.remediedAt,
        clockIndexes: indexes,
      };
    }),
  };
}
