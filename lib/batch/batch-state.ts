import type { Anomaly } from '@/lib/batch/anomaly';
import type { BatchEvent } from '@/lib/batch/events';
import type { AdhesiveSheet, PotLifeCriterion } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** One anchor of one piece within a glue operation. */
export interface JointState {
  readonly anchorId: string;
  /** Null while the joint is not set. */
  readonly set: JointSetting | null;
}

/** How a joint was set, or how a coat went on. */
export interface JointSetting {
  readonly mixId: string;
  readonly at: Instant;
  /** After the lower end of the mix's pot life: it happened and counts, but the bond is in doubt. */
  readonly late: boolean;
  readonly seq: number;
}

/** Where one piece stands on one operation. `part-set`: some joints of a glue operation are set, others not. */
export interface PieceOperation {
  readonly operationId: string;
  readonly status: 'open' | 'part-set' | 'done';
  /** When it was done; of a glue operation, when its last joint was set. */
  readonly doneAt: Instant | null;
  /** The event that did it; of a glue operation, the one that set the last joint. */
  readonly doneSeq: number | null;
  /** One for each anchor of a glue operation, in the plan's order; empty otherwise. */
  readonly joints: readonly JointState[];
  /** The film of a coat operation (or of a glue operation without anchors). */
  readonly coat: JointSetting | null;
  /** Since when a closed recoat window of this operation's film is made good by washing and sanding. */
  readonly remediedAt: Instant | null;
  /** The cure clocks of its joints or coat, as positions in `BatchState.clocks`. */
  readonly clockIndexes: readonly number[];
}

export interface PieceState {
  /** From 1 to the batch's quantity. */
  readonly number: number;
  readonly scrapped: { readonly at: Instant; readonly seq: number; readonly reason: string } | null;
  /** In the plan's order of operations. */
  readonly operations: readonly PieceOperation[];
}

/** The pot life of one mix at its own mass and temperature, as instants. */
export type MixPotLife =
  | {
      readonly ok: true;
      /** The countdown runs to this; a joint set after it is late. */
      readonly lowerAt: Instant;
      readonly centralAt: Instant;
      readonly upperAt: Instant;
      /** What ends this pot life. */
      readonly criterion: PotLifeCriterion;
      /** The mass or the temperature is far from those on the sheet. */
      readonly isExtrapolated: boolean;
    }
  | { readonly ok: false; readonly code: 'no-pot-life' | 'points-contradict' | 'bad-figures' };

export interface MixState {
  readonly mixId: string;
  readonly number: number;
  readonly operationId: string;
  readonly materialId: string;
  readonly materialName: string;
  readonly sheet: AdhesiveSheet;
  readonly massG: number;
  readonly temperatureC: number;
  readonly lotIds: readonly string[];
  readonly mixedAt: Instant;
  readonly seq: number;
  readonly personId: string | null;
  /** Null while the mix is running. */
  readonly closedAt: Instant | null;
  readonly closedSeq: number | null;
  readonly potLife: MixPotLife;
  /** Joints set with it, scrapped pieces included. */
  readonly jointCount: number;
  /** Pieces coated with it, scrapped pieces included. */
  readonly coatCount: number;
  /** Of those joints and coats, the ones after the lower end of the pot life. */
  readonly lateCount: number;
  readonly lastUsedAt: Instant | null;
  readonly quarantine: MixQuarantine | null;
}

/** A mix in doubt. */
export interface MixQuarantine {
  readonly at: Instant;
  readonly seq: number;
  readonly reason: string;
  /** Pieces that were tested or redone since, rising. */
  readonly clearedPieces: readonly number[];
}

/** The joints or coats that were set with one mix at one instant: they cure together. Scrapped pieces left out. */
export interface BatchClock {
  /** Unique within the batch. */
  readonly id: string;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationId: string;
  readonly materialName: string;
  readonly sheet: AdhesiveSheet;
  readonly mixedAt: Instant;
  readonly setAt: Instant;
  /** Rising. */
  readonly pieces: readonly number[];
  /** Anchors set in these pieces; none for a coat. */
  readonly anchorIds: readonly string[];
  readonly jointCount: number;
  readonly late: boolean;
}

export interface BatchNote {
  readonly seq: number;
  readonly at: Instant;
  readonly personId: string | null;
  readonly text: string;
  readonly pieces: readonly number[];
}

/** One event as it stands now. */
export interface HistoryEntry {
  readonly event: BatchEvent;
  /** `stands`: counts as written. `void`, `replaced`: corrected by the event `correctedBySeq`. */
  readonly standing: 'stands' | 'void' | 'replaced';
  readonly correctedBySeq: number | null;
  /** What of it could not be applied, or looks wrong. */
  readonly anomalies: readonly Anomaly[];
}

/** A batch as its events tell it. Plain data: the same events always give an equal state. */
export interface BatchState {
  readonly openedAt: Instant | null;
  readonly finishedAt: Instant | null;
  readonly finishedSeq: number | null;
  /** Piece n at position n - 1; empty before the opening. */
  readonly pieces: readonly PieceState[];
  /** In the order they were recorded. */
  readonly mixes: readonly MixState[];
  /** By setting instant, then mix number, then operation. */
  readonly clocks: readonly BatchClock[];
  readonly notes: readonly BatchNote[];
  /** Every event once, by seq. */
  readonly history: readonly HistoryEntry[];
  readonly anomalies: readonly Anomaly[];
  /** Seq of the newest event; 0 for none. */
  readonly lastSeq: number;
}
