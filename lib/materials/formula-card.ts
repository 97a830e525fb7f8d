import type { FigureSource } from '@/lib/materials/figure-source';
import type { Quantity } from '@/lib/units/quantity';

/** What "why?" opens: one card a formula, the same for every number it gives. */
export interface FormulaCard {
  readonly id: string;
  /** In workshop words. */
  readonly title: string;
  readonly formula: string;
  readonly source: FigureSource;
  readonly assumptions: readonly string[];
  /** Where the formula may be used; empty: wherever its inputs exist. */
  readonly validity: string;
}

/** One value that went into a formula. */
export interface FormulaInput {
  readonly symbol: string;
  readonly name: string;
  readonly quantity: Quantity;
  readonly source: FigureSource;
}

/** A number's whole answer to "why?". */
export interface Working {
  readonly card: FormulaCard;
  readonly inputs: readonly FormulaInput[];
}
