/** What one joint, or one coat on one piece, takes from a mix. */
export interface MixUse {
  readonly piece: number;
  /** Null for a coat. */
  readonly anchorId: string | null;
  /** Waste included, g. */
  readonly massG: number;
}

/**
 * `spread`: the joints of a piece go to different mixes, and every mix gets its share of every anchor, so that one bad
 * mix never holds a whole piece. `traceable`: all joints of a piece come from one mix, so that a bad mix names its pieces.
 */
export const ARRANGEMENTS = ['spread', 'traceable'] as const;
export type Arrangement = (typeof ARRANGEMENTS)[number];

/** The uses of each piece together, pieces by number. */
export function usesByPiece(uses: readonly MixUse[]): MixUse[][] {
  const pieces = new Map<number, MixUse[]>();
  for (const use of uses) {
    const joints = pieces.get(use.piece);
    if (joints === undefined) pieces.set(use.piece, [use]);
    else joints.push(use);
  }
  return [...pieces].sort(([a], [b]) => a - b).map(([, joints]) => joints);
}

/** Fewest mixes that an arrangement of these pieces needs to keep its word. */
export function leastMixes(pieces: readonly (readonly MixUse[])[], arrangement: Arrangement): number {
  if (pieces.length === 0) return 0;
  return arrangement === 'spread' && pieces.some((joints) => joints.length > 1) ? 2 : 1;
}

/**
 * Shares the uses of all pieces among `mixes` cups. No use is left out or in two. Spread: cups differ by one use at the most. Traceable:
 * by one piece at the most.
 * Throws RangeError for a number of mixes that is not whole or below 1.
 */
export function arrange(pieces: readonly (readonly MixUse[])[], arrangement: Arrangement, mixes: number): MixUse[][] {
  if (!(Number.isInteger(mixes) && mixes >= 1)) throw new RangeError(`arrange needs 1 mix or more, got ${mixes}`);
  const cups: MixUse[][] = Array.from({ length: mixes }, () => []);
  if (arrangement === 'traceable') {
    for (const [index, joints] of pieces.entries()) cups[Math.floor((index * mixes) / pieces.length)]?.push(...joints);
    return cups;
  }
  let slot = 0;
  for (const joints of pieces) {
    // A piece fills consecutive cups. After every full turn through cups and anchors the anchors move on by one, or with
    // two anchors and two cups the first anchor would always land in the first cup.
    const turn = Math.floor(slot / leastCommonMultiple(joints.length, mixes));
    for (let at = 0; at < joints.length; at++) {
      const joint = joints[(at + turn) % joints.length];
      if (joint !== undefined) cups[slot % mixes]?.push(joint);
      slot++;
    }
  }
  return cups;
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
