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
  const { clocks, indexOf } = gatherClocks(draft);
  return {
    openedAt: draft.openedAt,
    finishedAt: draft.finishedAt,
    finishedSeq: draft.finishedSeq,
    pieces: draft.pieces.map((piece) => finishPiece(piece, draft.index.operations, indexOf)),
    mixes: [...draft.mixes.values()].map(({ operationIndex: _, ...mix }): MixState => mix),
    clocks,
    notes: draft.notes,
    history,
    anomalies: draft.anomalies,
    lastSeq: history.at(-1)?.event.seq ?? 0,
  };
}

interface GrowingClock {
  readonly id: string;
  readonly setting: JointSetting;
  readonly pieces: number[];
  readonly anchorIds: string[];
  jointCount: number;
}

/** Joints of one event share their setting, so a clock is looked up by its name once for each event only. */
class ClockTable {
  readonly byId = new Map<string, GrowingClock>();
  readonly bySetting = new Map<JointSetting, GrowingClock>();

  join(setting: JointSetting, piece: number, anchorId: string | null): void {
    const clock = this.bySetting.get(setting) ?? this.found(setting);
    // Pieces come in rising order, so a piece that is there already is the last one.
    if (clock.pieces.at(-1) !== piece) clock.pieces.push(piece);
    if (anchorId === null) return;
    if (!clock.anchorIds.includes(anchorId)) clock.anchorIds.push(anchorId);
    clock.jointCount++;
  }

  private found(setting: JointSetting): GrowingClock {
    const id = `${setting.mixId}@${setting.at}`;
    const clock = this.byId.get(id) ?? { id, setting, pieces: [], anchorIds: [], jointCount: 0 };
    this.byId.set(id, clock);
    this.bySetting.set(setting, clock);
    return clock;
  }
}

type ClockIndex = ReadonlyMap<JointSetting, number>;

function gatherClocks(draft: BatchDraft): { readonly clocks: readonly BatchClock[]; readonly indexOf: ClockIndex } {
  const table = new ClockTable();
  for (const piece of draft.pieces) {
    if (piece.scrapped !== null) continue;
    piece.operations.forEach((operation, index) => {
      if (operation.coat !== null) table.join(operation.coat, piece.number, null);
      if (operation.joints.length === 0) return;
      const anchorIds = draft.index.operations[index]?.operation.anchorIds ?? [];
      operation.joints.forEach((joint, anchor) => {
        if (joint !== null) table.join(joint, piece.number, anchorIds[anchor] ?? null);
      });
    });
  }
  const clocks: BatchClock[] = [];
  for (const { id, setting, pieces, anchorIds, jointCount } of table.byId.values()) {
    const mix = draft.mixes.get(setting.mixId);
    if (mix === undefined) continue;
    const { mixId, number: mixNumber, operationId, materialName, sheet, mixedAt } = mix;
    const { at: setAt, late } = setting;
    clocks.push({
      id,
      mixId,
      mixNumber,
      operationId,
      materialName,
      sheet,
      mixedAt,
      setAt,
      pieces,
      anchorIds,
      jointCount,
      late,
    });
  }
  clocks.sort((a, b) => a.setAt - b.setAt || a.mixNumber - b.mixNumber || (a.id < b.id ? -1 : 1));
  const indexOfId = new Map(clocks.map((clock, index) => [clock.id, index]));
  const indexOf = new Map<JointSetting, number>();
  for (const [setting, { id }] of table.bySetting) {
    const index = indexOfId.get(id);
    if (index !== undefined) indexOf.set(setting, index);
  }
  return { clocks, indexOf };
}

function finishPiece(piece: DraftPiece, operations: readonly IndexedOperation[], indexOf: ClockIndex): PieceState {
  return {
    number: piece.number,
    scrapped: piece.scrapped,
    operations: piece.operations.map((own, index): PieceOperation => {
      const operation = operations[index]?.operation;
      return {
        operationId: operation?.id ?? '',
        status: own.doneAt !== null ? 'done' : own.joints.some((joint) => joint !== null) ? 'part-set' : 'open',
        doneAt: own.doneAt,
        doneSeq: own.doneSeq,
        joints:
          own.joints.length === 0
            ? NONE
            : own.joints.map((set, anchor) => ({ anchorId: operation?.anchorIds[anchor] ?? '', set })),
        coat: own.coat,
        remediedAt: own.remediedAt,
        clockIndexes: piece.scrapped === null ? clockIndexes(own, indexOf) : NONE,
      };
    }),
  };
}

const NONE: readonly never[] = [];

function clockIndexes({ coat, joints }: DraftOperation, indexOf: ClockIndex): readonly number[] {
  if (coat === null && joints.length === 0) return NONE;
  const indexes: number[] = [];
  for (const setting of coat === null ? joints : [coat]) {
    const index = setting === null ? undefined : indexOf.get(setting);
    if (index !== undefined && !indexes.includes(index)) indexes.push(index);
  }
  return indexes;
}
