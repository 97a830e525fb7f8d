import type { Body } from '@/lib/geometry/body';
import type { CoverProfile } from '@/lib/geometry/cover';
import { pointAt, type ShankPath } from '@/lib/geometry/shank-path';
import { surfaceDistance } from '@/lib/geometry/surface-distance';
import type { SpecAnchor } from '@/lib/spec/spec-model';
import { shearDiameterMm } from '@/lib/strength/bond-factors';
import { coverCells, equivalentCoverMm } from '@/lib/strength/equivalent-cover';

/** Cover of a shank from its mouth to its end, on the footing of a square one in endless wood. */
export interface CoverFacts {
  readonly shankMm: number;
  /** Least cover at or above each step of depth and at the end. */
  readonly leastMm: number;
  readonly atDepthMm: number;
  /** Cover of each step of depth, from the mouth down. */
  readonly cellsMm: readonly number[];
  readonly stepMm: number;
}

/** Null for a wire without a shank, and where its thickness or depth is not known. */
export function coverFacts(anchor: SpecAnchor, body: Body, path: ShankPath, cover: CoverProfile): CoverFacts | null {
  const { embedmentMm } = anchor;
  const shankMm = shankDiameterMm(anchor);
  if (shankMm === null || embedmentMm === null) return null;
  const cellsMm = coverCells(cover, embedmentMm, shankMm);
  const end = pointAt(path, embedmentMm);
  let leastMm = equivalentCoverMm(surfaceDistance(body, end.x, end.z), embedmentMm, shankMm);
  let atDepthMm = embedmentMm;
  for (const [k, cell] of cellsMm.entries()) {
    if (cell >= leastMm) continue;
    leastMm = cell;
    // The mouth counts as the step below it.
    atDepthMm = Math.max(1, k) * cover.stepMm;
  }
  return { shankMm, leastMm, atDepthMm, cellsMm, stepMm: cover.stepMm };
}

/** What stands in the wood: the wider of a pair and its hole, or a thread; null: not known, or no shank. */
function shankDiameterMm({ kind, wireDiameterMm, bitDiameterMm, screwEye }: SpecAnchor): number | null {
  switch (kind) {
    case 'twisted-wire':
      return wireDiameterMm === null || bitDiameterMm === null
        ? null
        : shearDiameterMm(2 * wireDiameterMm, bitDiameterMm);
    case 'screw-eye': {
      const diameter = screwEye?.sheet?.threadDiameterMm;
      return diameter !== undefined && diameter > 0 && Number.isFinite(diameter) ? diameter : null;
    }
    case 'through-wire':
      return null;
  }
}
