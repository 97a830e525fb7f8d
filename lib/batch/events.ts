import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/**
 * What can happen to a batch at the bench. Events are only ever appended; a correction is one more event.
 * Pieces are named by number (1 to quantity), anchors, operations, mixes and materials by id.
 */
export type BatchEventBody =
  | { readonly kind: 'batch-opened'; readonly quantity: number }
  /** Attended work finished on these pieces. */
  | { readonly kind: 'work-done'; readonly operationId: string; readonly pieces: readonly number[] }
  /** A cup was mixed. Carries the sheet as it stood, so that a later edit of the material cannot move old clocks. */
  | {
      readonly kind: 'mix-started';
      readonly mixId: string;
      /** Number of the mix within its batch, from 1. */
      readonly number: number;
      readonly operationId: string;
      readonly materialId: string;
      readonly materialName: string;
      readonly sheet: AdhesiveSheet;
      readonly massG: number;
      /** The warmer of room and parts, degC. */
      readonly temperatureC: number;
      readonly lotIds: readonly string[];
    }
  | {
      readonly kind: 'joints-set';
      readonly mixId: string;
      readonly joints: readonly { readonly piece: number; readonly anchorId: string }[];
    }
  | { readonly kind: 'mix-closed'; readonly mixId: string }
  | {
      readonly kind: 'coat-applied';
      readonly mixId: string;
      readonly pieces: readonly number[];
      /** Conditions at the time, where they were known. */
      readonly airC?: number;
      readonly humidityPct?: number;
      readonly surfaceC?: number;
    }
  /**
   * A closed recoat window was made good by the sheet's remedy (washed and sanded), so the next coat may go on.
   * `operationId` is the operation that put on the film whose window closed, not the coat to come.
   */
  | { readonly kind: 'window-remedied'; readonly operationId: string; readonly pieces: readonly number[] }
  | { readonly kind: 'pieces-scrapped'; readonly pieces: readonly number[]; readonly reason: string }
  /** A mix is in doubt: the pieces it went into are held until each is tested, redone or scrapped. */
  | { readonly kind: 'mix-quarantined'; readonly mixId: string; readonly reason: string }
  /** Pieces of a quarantined mix are free again. */
  | {
      readonly kind: 'pieces-cleared';
      readonly mixId: string;
      readonly pieces: readonly number[];
      readonly how: 'tested' | 'redone';
      readonly note: string;
    }
  | { readonly kind: 'noted'; readonly text: string; readonly pieces: readonly number[] }
  /** The event `seq` did not happen as written: it is void, or `replacement` happened instead at `replacementAt`. */
  | {
      readonly kind: 'corrected';
      readonly seq: number;
      readonly reason: string;
      readonly replacement: { readonly at: Instant; readonly body: CorrectableBody } | null;
    }
  | { readonly kind: 'batch-finished' }
  | { readonly kind: 'batch-reopened' };

/** A correction may put any other event in place of a wrong one, but not a correction or the opening. */
export type CorrectableBody = Exclude<BatchEventBody, { kind: 'corrected' | 'batch-opened' }>;

export interface BatchEvent {
  /** Position in the batch's history, from 1, without holes. */
  readonly seq: number;
  /** Made by the client before sending; the same key twice is the same action. */
  readonly key: string;
  /** When it happened at the bench. */
  readonly at: Instant;
  /** When the server took it in. */
  readonly recordedAt: Instant;
  readonly personId: string | null;
  readonly body: BatchEventBody;
}
