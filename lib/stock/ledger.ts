/**
 * The book of one lot: what it came with, and every movement since. Quantities are whole thousandths of the lot's unit
 * (mg, thousandths of a mm, thousandths of a piece), so that sums are exact in any order.
 */

/** What a lot is counted in. */
export const STOCK_UNITS = ['g', 'mm', 'pieces'] as const;
export type StockUnit = (typeof STOCK_UNITS)[number];

export const MOVEMENT_KINDS = ['receipt', 'issue', 'count', 'correction'] as const;
export type MovementKind = (typeof MOVEMENT_KINDS)[number];

/** A quantity in thousandths of its unit, to the nearest. RangeError for NaN, infinity and what is too large to be exact. */
export function toMilli(quantity: number): number {
  const milli = Math.round(quantity * 1000);
  if (!Number.isSafeInteger(milli)) throw new RangeError(`toMilli needs a finite quantity, got ${quantity}`);
  return milli === 0 ? 0 : milli; // no minus zero
}

/** Thousandths as a quantity in the unit. */
export function fromMilli(milli: number): number {
  return milli / 1000;
}

/** What is wanted of a lot. All quantities in thousandths, whole. */
export type MovementRequest =
  /** More of the same lot came in. */
  | { readonly kind: 'receipt'; readonly milli: number }
  /**
   * Something was taken. `foundLeftMilli`: what really lies there after the taking, when the book was wrong; null: the
   * book is right.
   */
  | { readonly kind: 'issue'; readonly milli: number; readonly foundLeftMilli: number | null }
  /** The lot was counted or weighed. */
  | { readonly kind: 'count'; readonly countedMilli: number }
  /** An earlier movement was written wrong: this is what it should have said; 0 for one that did not happen. */
  | { readonly kind: 'correction'; readonly of: CorrectableMovement; readonly insteadMilli: number };

/** A movement as it stands, with all that was put right of it. */
export interface CorrectableMovement {
  readonly kind: MovementKind;
  /** Signed: its own quantity and those of its corrections. */
  readonly standingMilli: number;
}

/** A line that the book gets. */
export interface MovementDraft {
  readonly kind: MovementKind;
  /** Signed. */
  readonly quantityMilli: number;
  /** What is left after it; never below 0. */
  readonly leftMilli: number;
}

export type MovementDecision =
  | { readonly ok: true; readonly drafts: readonly MovementDraft[] }
  /** The book holds `leftMilli` only, `shortMilli` too little. */
  | { readonly ok: false; readonly code: 'not-enough'; readonly leftMilli: number; readonly shortMilli: number }
  /** Nothing would move. */
  | { readonly ok: false; readonly code: 'nothing' }
  /** Counts and corrections are not put right themselves: the lot is counted, or what was corrected is put right again. */
  | { readonly ok: false; readonly code: 'not-correctable' };

/**
 * Whether a movement fits the book of a lot that holds `leftMilli`, and the lines it becomes. The book never goes below
 * zero: taking more than it holds is refused unless the maker says what really lies there, which becomes a correction
 * of its own before the issue. A count that finds what the book says is still a line. RangeError for quantities that
 * are not whole or are negative.
 */
export function decideMovement(leftMilli: number, request: MovementRequest): MovementDecision {
  switch (request.kind) {
    case 'receipt':
      return moved(leftMilli, 'receipt', whole(request.milli));
    case 'issue':
      return issued(leftMilli, whole(request.milli), request.foundLeftMilli);
    case 'count': {
      const counted = whole(request.countedMilli);
      return { ok: true, drafts: [draft('count', counted - leftMilli, counted)] };
    }
    case 'correction':
      return corrected(leftMilli, request.of, whole(request.insteadMilli));
  }
}

function issued(leftMilli: number, milli: number, foundLeftMilli: number | null): MovementDecision {
  if (milli === 0) return { ok: false, code: 'nothing' };
  if (foundLeftMilli === null) return moved(leftMilli, 'issue', -milli);
  const before = whole(foundLeftMilli) + milli;
  const issue = draft('issue', -milli, foundLeftMilli);
  const wrongBy = before - leftMilli;
  return { ok: true, drafts: wrongBy === 0 ? [issue] : [draft('correction', wrongBy, before), issue] };
}

function corrected(leftMilli: number, of: CorrectableMovement, insteadMilli: number): MovementDecision {
  switch (of.kind) {
    case 'receipt':
      return moved(leftMilli, 'correction', insteadMilli - of.standingMilli);
    case 'issue':
      return moved(leftMilli, 'correction', -insteadMilli - of.standingMilli);
    case 'count':
    case 'correction':
      return { ok: false, code: 'not-correctable' };
  }
}

function moved(leftMilli: number, kind: MovementKind, quantityMilli: number): MovementDecision {
  if (quantityMilli === 0) return { ok: false, code: 'nothing' };
  const left = leftMilli + quantityMilli;
  if (left < 0) return { ok: false, code: 'not-enough', leftMilli, shortMilli: -left };
  return { ok: true, drafts: [draft(kind, quantityMilli, left)] };
}

function draft(kind: MovementKind, quantityMilli: number, leftMilli: number): MovementDraft {
  return { kind, quantityMilli, leftMilli };
}

function whole(milli: number): number {
  if (!Number.isSafeInteger(milli) || milli < 0)
    throw new RangeError(`a movement needs whole thousandths of at least 0, got ${milli}`);
  return milli;
}
