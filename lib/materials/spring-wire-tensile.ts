import { type FigureSource, published } from '@/lib/materials/figure-source';
import { inches, psi } from '@/lib/units/force-and-length';

export const SPRING_WIRE_SOURCE: FigureSource = published(
  'ASTM A313, type 302 class 1 and 304 spring temper (read as a table)',
);

/** Diameter up to and including, inch; least and greatest tensile strength, ksi. */
const ROWS = [
  [0.018, 300, 330],
  [0.02, 300, 330],
  [0.022, 296, 326],
  [0.024, 292, 322],
  [0.026, 291, 320],
  [0.028, 289, 318],
  [0.031, 285, 315],
  [0.034, 282, 310],
  [0.037, 280, 308],
  [0.041, 275, 304],
  [0.045, 272, 300],
  [0.05, 267, 295],
  [0.054, 265, 293],
  [0.058, 261, 289],
  [0.063, 258, 285],
  [0.07, 252, 281],
  [0.075, 250, 278],
  [0.08, 246, 275],
] as const;

/** Diameters the rows cover: over .018 in, to .080 in. */
export const SPRING_WIRE_RANGE_MM = { over: inches(0.018), to: inches(0.08) } as const;
/** A diameter typed in mm may miss the row's inch by rounding. */
const ROUNDING_MM = 0.0005;

export interface TensileRange {
  readonly leastMpa: number;
  readonly greatestMpa: number;
}

/** The standard's row for a diameter, as printed; null outside the rows. A .041 in wire belongs to ".037 to .041". */
export function springWireRow(diameterMm: number): TensileRange | null {
  const index = rowIndex(diameterMm);
  const row = ROWS[index];
  return row === undefined || index === 0 ? null : { leastMpa: psi(row[1] * 1000), greatestMpa: psi(row[2] * 1000) };
}

/**
 * Tensile strength of spring temper wire of any diameter within the rows; null outside.
 *
 * Where a row begins, the standard's figure falls by up to 2 percent at once, so that a slightly thicker wire would
 * come out weaker. Chosen: a wire carries at least what the thickest of the thinner row carries.
 */
export function springWireTensile(diameterMm: number): TensileRange | null {
  const row = springWireRow(diameterMm);
  const below = ROWS[rowIndex(diameterMm) - 1];
  if (row === null || below === undefined) return null;
  const area = (inches(below[0]) / diameterMm) ** 2;
  return {
    leastMpa: Math.max(row.leastMpa, psi(below[1] * 1000) * area),
    greatestMpa: Math.max(row.greatestMpa, psi(below[2] * 1000) * area),
  };
}

function rowIndex(diameterMm: number): number {
  return ROWS.findIndex(([to]) => diameterMm <= inches(to) + ROUNDING_MM);
}
