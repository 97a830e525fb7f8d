import { type Digest, type Specimen, seededOrder } from '@/lib/pulltest/pull-design';

/** A test board and how the holes are to stand on it, mm. */
export interface CouponBoard {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** From the middle of a hole to the nearest edge. */
  readonly edgeMm: number;
  /** From the middle of a hole to that of its neighbour. */
  readonly spacingMm: number;
  /** Wider of hole and twisted pair. */
  readonly shankDiameterMm: number;
}

export interface CouponPlace {
  readonly specimenId: string;
  /** Board, from 1. */
  readonly board: number;
  /** From the left and lower edge. */
  readonly xMm: number;
  readonly yMm: number;
}

export type CouponLayout =
  | {
      readonly ok: true;
      readonly places: readonly CouponPlace[];
      readonly boards: number;
      readonly columns: number;
      readonly rows: number;
      /** Nothing of the jig may press on the wood nearer to a hole than this. */
      readonly jigClearMm: number;
    }
  | { readonly ok: false; readonly code: 'bad-board' }
  | {
      readonly ok: false;
      readonly code: 'edge-too-near' | 'spacing-too-near' | 'board-too-thin';
      readonly leastMm: number;
    }
  | {
      readonly ok: false;
      readonly code: 'board-too-small';
      readonly leastLengthMm: number;
      readonly leastWidthMm: number;
    };

/** Distance to an edge at which it no longer weakens a joint, in shank diameters. Source: that of `lib/strength`. */
const EDGE_DIAMETERS = 2.5;
/** Distance between joints, in shank diameters, and at least. Chosen: twice the edge distance; 1 in for the jig. */
const SPACING_DIAMETERS = 5;
const LEAST_SPACING_MM = 25.4;
/** Wood under the deepest hole. Chosen. */
const FLOOR_MM = 3;
/** The jig keeps clear by three depths, or 1 in where that is more. Source: reference on strength, 7.2 (chosen). */
const JIG_DEPTHS = 3;

/**
 * Where each specimen stands on its board. Specimens are dealt over the places at random from the seed, so that no
 * depth and no mix has the better end of the board. `boardOf`: specimens of different text go on different boards (one
 * a wood).
 */
export function couponLayout(
  specimens: readonly Specimen[],
  board: CouponBoard,
  seed: string,
  digest: Digest,
  boardOf: (specimen: Specimen) => string = () => '',
): CouponLayout {
  const { lengthMm, widthMm, thicknessMm, edgeMm, spacingMm, shankDiameterMm } = board;
  const all = [lengthMm, widthMm, thicknessMm, edgeMm, spacingMm, shankDiameterMm];
  if (specimens.length === 0 || !all.every((value) => value > 0 && Number.isFinite(value))) {
    return { ok: false, code: 'bad-board' };
  }
  const deepest = Math.max(...specimens.map(({ depthMm }) => depthMm));
  const leastEdge = EDGE_DIAMETERS * shankDiameterMm;
  if (edgeMm < leastEdge - 1e-9) return { ok: false, code: 'edge-too-near', leastMm: leastEdge };
  const leastSpacing = Math.max(SPACING_DIAMETERS * shankDiameterMm, LEAST_SPACING_MM);
  if (spacingMm < leastSpacing - 1e-9) return { ok: false, code: 'spacing-too-near', leastMm: leastSpacing };
  if (thicknessMm < deepest + FLOOR_MM) return { ok: false, code: 'board-too-thin', leastMm: deepest + FLOOR_MM };
  if (lengthMm < 2 * edgeMm || widthMm < 2 * edgeMm) {
    return { ok: false, code: 'board-too-small', leastLengthMm: 2 * edgeMm, leastWidthMm: 2 * edgeMm };
  }
  const columns = 1 + Math.floor((lengthMm - 2 * edgeMm) / spacingMm + 1e-9);
  const rows = 1 + Math.floor((widthMm - 2 * edgeMm) / spacingMm + 1e-9);
  let boards = 0;
  const places = [...new Set(specimens.map(boardOf))].flatMap((kind) => {
    const ids = specimens.filter((specimen) => boardOf(specimen) === kind).map(({ id }) => id);
    const from = boards;
    boards += Math.ceil(ids.length / (columns * rows));
    return seededOrder(ids, `${seed}:place`, digest).map((specimenId, i): CouponPlace => {
      const onBoard = i % (columns * rows);
      return {
        specimenId,
        board: from + 1 + Math.floor(i / (columns * rows)),
        xMm: edgeMm + (onBoard % columns) * spacingMm,
        yMm: edgeMm + Math.floor(onBoard / columns) * spacingMm,
      };
    });
  });
  const jigClearMm = Math.max(JIG_DEPTHS * deepest, LEAST_SPACING_MM);
  return { ok: true, places, boards, columns, rows, jigClearMm };
}
