/** `yield`: net / (1 - scrap), what really has to go in. `add-on`: net x (1 + scrap), the shop's habit where it is one. */
export type ScrapForm = 'yield' | 'add-on';

/** A step of the route with the share of its pieces that are spoilt at it. */
export interface ScrappingOperation {
  readonly id: string;
  /** 0 to below 1. */
  readonly scrapShare: number;
}

export interface BillNeed {
  readonly materialId: string;
  readonly unit: 'g' | 'mm' | 'pieces';
  /** For one piece, without scrap. */
  readonly perPiece: number;
  /** Where it goes in: pieces spoilt before do not take it. Null: at the start. */
  readonly operationId: string | null;
}

export interface Bill {
  readonly goodPieces: number;
  /** Pieces to start with so that the good ones come out. */
  readonly startPieces: number;
  /** Whole pieces that come to each operation. */
  readonly piecesAt: readonly number[];
  /** One for each need; `total` for the batch, scrap included, pieces rounded up to whole ones. */
  readonly lines: readonly (BillNeed & { readonly total: number; readonly perGoodPiece: number })[];
}

/**
 * The bill of a batch from which `goodPieces` are to come out. A piece spoilt at a late operation has taken all materials
 * up to it, so a need grows by the scrap of its own operation and of all that follow; spoilt pieces compound.
 *
 * Throws RangeError for a quantity or share that is not one, or a need at an operation that is not on the route.
 */
export function billOf(
  goodPieces: number,
  operations: readonly ScrappingOperation[],
  needs: readonly BillNeed[],
  form: ScrapForm = 'yield',
): Bill {
  if (!(goodPieces >= 0 && Number.isInteger(goodPieces))) {
    throw new RangeError(`billOf needs a whole number of pieces, got ${goodPieces}`);
  }
  const reaching = piecesReaching(goodPieces, operations, form);
  const startPieces = wholePieces(reaching[0] ?? goodPieces);
  const lines = needs.map((need) => {
    const at = need.operationId === null ? 0 : operations.findIndex(({ id }) => id === need.operationId);
    if (at < 0) throw new RangeError(`billOf needs the operation of every need, got ${need.operationId}`);
    if (!(need.perPiece >= 0)) throw new RangeError(`billOf needs quantities of 0 or more, got ${need.perPiece}`);
    const exact = need.perPiece * (reaching[at] ?? goodPieces);
    const total = need.unit === 'pieces' ? wholePieces(exact) : exact;
    return { ...need, total, perGoodPiece: goodPieces > 0 ? exact / goodPieces : need.perPiece };
  });
  return { goodPieces, startPieces, piecesAt: reaching.map(wholePieces), lines };
}

/** Pieces that reach each operation so that `good` leave the last. */
function piecesReaching(good: number, operations: readonly ScrappingOperation[], form: ScrapForm): number[] {
  const reaching: number[] = [];
  let pieces = good;
  for (const { scrapShare } of operations.toReversed()) {
    if (!(scrapShare >= 0 && scrapShare < 1)) throw new RangeError(`billOf needs scrap from 0 to 1, got ${scrapShare}`);
    pieces = form === 'yield' ? pieces / (1 - scrapShare) : pieces * (1 + scrapShare);
    reaching.unshift(pieces);
  }
  return reaching;
}

/** Rounded up, but for what rounding alone has put above a whole number. */
function wholePieces(pieces: number): number {
  return Math.max(0, Math.ceil(pieces - 1e-9));
}
