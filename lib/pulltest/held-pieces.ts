import type { Acceptance } from '@/lib/pulltest/acceptance';

/** A joint of a piece and the mix it was set with. */
export interface PieceJoint {
  readonly piece: number;
  readonly anchorId: string;
  readonly mixId: string;
}

export interface HeldPiece {
  readonly piece: number;
  /** Its joints of mixes that are held, with the mix. */
  readonly joints: readonly { readonly anchorId: string; readonly mixId: string }[];
}

/** The mixes that an acceptance holds. */
export function heldMixIds(result: Acceptance): ReadonlySet<string> {
  return new Set(result.mixes.filter(({ verdict }) => verdict === 'hold').map(({ mixId }) => mixId));
}

/**
 * The very pieces that held or quarantined mixes went into, by number. A piece leaves the list when all of its held joints were
 * proof-tested one by one, redone or scrapped with the piece: `settled` names them as `piece:anchorId`.
 */
export function heldPieces(
  joints: readonly PieceJoint[],
  held: ReadonlySet<string>,
  settled: ReadonlySet<string> = new Set(),
): HeldPiece[] {
  const open = joints.filter(({ piece, anchorId, mixId }) => held.has(mixId) && !settled.has(`${piece}:${anchorId}`));
  const pieces = [...new Set(open.map(({ piece }) => piece))].sort((a, b) => a - b);
  return pieces.map((piece) => ({
    piece,
    joints: open.filter((joint) => joint.piece === piece).map(({ anchorId, mixId }) => ({ anchorId, mixId })),
  }));
}
