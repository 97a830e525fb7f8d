import type { BatchState, MixState, PieceState } from '@/lib/batch/batch-state';

/** A mix in doubt and the pieces that are held for it. */
export interface HeldMix {
  readonly mix: MixState;
  readonly reason: string;
  /** Neither tested, redone nor scrapped since, rising; never empty. */
  readonly pieces: readonly number[];
}

/** The very pieces that quarantined mixes went into, without those that are free again. */
export function quarantinedPieces({ mixes, pieces }: Pick<BatchState, 'mixes' | 'pieces'>): HeldMix[] {
  return mixes.flatMap((mix): HeldMix[] => {
    if (mix.quarantine === null) return [];
    const cleared = new Set(mix.quarantine.clearedPieces);
    const held = pieces
      .filter((piece) => piece.scrapped === null && !cleared.has(piece.number) && isOfMix(piece, mix.mixId))
      .map(({ number }) => number);
    return held.length === 0 ? [] : [{ mix, reason: mix.quarantine.reason, pieces: held }];
  });
}

function isOfMix({ operations }: PieceState, mixId: string): boolean {
  return operations.some(
    ({ joints, coat }) => coat?.mixId === mixId || joints.some(({ set }) => set !== null && set.mixId === mixId),
  );
}
