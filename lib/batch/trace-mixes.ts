import type { BatchState } from './batch-state';

/** Where mixes went in one piece. */
export interface TracedPiece {
  readonly number: number;
  readonly isScrapped: boolean;
  /** By mix: joints set with it, and operations whose film came from it. */
  readonly joints: readonly { readonly anchorId: string; readonly mixId: string; readonly isLate: boolean }[];
  readonly coats: readonly { readonly operationId: string; readonly mixId: string; readonly isLate: boolean }[];
}

/**
 * The pieces of a batch that hold something of these mixes, by number, as the batch's events stand now: what a
 * correction took back is not there. `mixIds` null: of any mix.
 */
export function traceMixes(state: BatchState, mixIds: ReadonlySet<string> | null): TracedPiece[] {
  const isAsked = (mixId: string) => mixIds === null || mixIds.has(mixId);
  return state.pieces.flatMap(({ number, scrapped, operations }): TracedPiece[] => {
    const joints = operations.flatMap((operation) =>
      operation.joints.flatMap(({ anchorId, set }) =>
        set === null || !isAsked(set.mixId) ? [] : [{ anchorId, mixId: set.mixId, isLate: set.late }],
      ),
    );
    const coats = operations.flatMap(({ operationId, coat }) =>
      coat === null || !isAsked(coat.mixId) ? [] : [{ operationId, mixId: coat.mixId, isLate: coat.late }],
    );
    return joints.length + coats.length === 0 ? [] : [{ number, isScrapped: scrapped !== null, joints, coats }];
  });
}
