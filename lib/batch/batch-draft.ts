import type { Anomaly, AnomalyCode } from '@/lib/batch/anomaly';
import type { BatchNote, JointSetting, MixPotLife, MixQuarantine } from '@/lib/batch/batch-state';
import type { BatchEvent } from '@/lib/batch/events';
import type { BatchPlan } from '@/lib/batch/plan';
import type { PlanIndex } from '@/lib/batch/plan-index';
import { planIndex } from '@/lib/batch/plan-index';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** Most pieces a batch can have: chosen, far above any real batch, so that a wrong figure cannot fill the memory. */
export const MAX_BATCH_PIECES = 10_000;
const MAX_NAMED_PIECES = 100;

export interface DraftOperation {
  doneAt: Instant | null;
  doneSeq: number | null;
  /** One for each anchor of the operation. */
  readonly joints: (JointSetting | null)[];
  coat: JointSetting | null;
  remediedAt: Instant | null;
}

export interface DraftPiece {
  readonly number: number;
  scrapped: { readonly at: Instant; readonly seq: number; readonly reason: string } | null;
  readonly operations: readonly DraftOperation[];
}

export interface DraftMix {
  readonly mixId: string;
  readonly number: number;
  readonly operationId: string;
  /** Position of the operation in the plan. */
  readonly operationIndex: number;
  readonly materialId: string;
  readonly materialName: string;
  readonly sheet: AdhesiveSheet;
  readonly massG: number;
  readonly temperatureC: number;
  readonly lotIds: readonly string[];
  readonly mixedAt: Instant;
  readonly seq: number;
  readonly personId: string | null;
  readonly potLife: MixPotLife;
  closedAt: Instant | null;
  closedSeq: number | null;
  jointCount: number;
  coatCount: number;
  lateCount: number;
  lastUsedAt: Instant | null;
  quarantine: MixQuarantine | null;
}

/** The state while events are being taken in. */
export class BatchDraft {
  readonly plan: BatchPlan;
  readonly index: PlanIndex;
  readonly mixes = new Map<string, DraftMix>();
  readonly notes: BatchNote[] = [];
  readonly anomalies: Anomaly[] = [];
  pieces: readonly DraftPiece[] = [];
  openedAt: Instant | null = null;
  finishedAt: Instant | null = null;
  finishedSeq: number | null = null;
  seq = 0;
  personId: string | null = null;
  private found = new Map<string, { code: AnomalyCode; applied: boolean; pieces: Set<number>; count: number }>();

  constructor(plan: BatchPlan) {
    this.plan = plan;
    this.index = planIndex(plan);
  }

  /** The event that is being taken in from here on. */
  begin(event: BatchEvent): void {
    this.seq = event.seq;
    this.personId = event.personId;
  }

  /** What was wrong with the event, one anomaly for each kind of wrong. */
  end(): readonly Anomaly[] {
    if (this.found.size === 0) return [];
    const anomalies = [...this.found.values()].map(
      ({ code, applied, pieces, count }): Anomaly => ({
        seq: this.seq,
        code,
        applied,
        pieces: [...pieces].sort((a, b) => a - b),
        count,
      }),
    );
    this.found = new Map();
    this.anomalies.push(...anomalies);
    return anomalies;
  }

  /** The event, or its part about this piece, is left out. */
  refuse(code: AnomalyCode, piece?: number): void {
    this.note(code, false, piece);
  }

  /** It is taken in, but should not have been. */
  flag(code: AnomalyCode, piece?: number): void {
    this.note(code, true, piece);
  }

  /** The piece of this number, or null with an anomaly when there is none or it is scrapped. */
  livePiece(number: number): DraftPiece | null {
    const piece = this.pieces[number - 1];
    if (piece === undefined) {
      this.refuse('unknown-pieces', number);
      return null;
    }
    if (piece.scrapped !== null) {
      this.refuse('scrapped-pieces', number);
      return null;
    }
    return piece;
  }

  private note(code: AnomalyCode, applied: boolean, piece: number | undefined): void {
    const key = `${code} ${applied}`;
    const known = this.found.get(key) ?? { code, applied, pieces: new Set<number>(), count: 0 };
    known.count++;
    if (piece !== undefined && known.pieces.size < MAX_NAMED_PIECES) known.pieces.add(piece);
    this.found.set(key, known);
  }
}
