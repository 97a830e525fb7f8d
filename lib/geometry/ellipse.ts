/**
 * Perimeter of an ellipse with semi-axes a and b, both >= 0; relative error about 1e-15.
 * Source: Gauss's arithmetic-geometric mean for the complete elliptic integral, DLMF 19.8.6 (from memory).
 */
export function ellipsePerimeter(a: number, b: number): number {
  let x = Math.max(a, b);
  let y = Math.min(a, b);
  if (y === 0) return 4 * x;
  let sum = x * x - 0.5 * (x * x - y * y);
  let weight = 0.5;
  while (x - y > 1e-15 * x) {
    const c = 0.5 * (x - y);
    const middle = 0.5 * (x + y);
    y = Math.sqrt(x * y);
    x = middle;
    weight *= 2;
    sum -= weight * c * c;
  }
  return (2 * Math.PI * sum) / x;
}

/** What of an ellipse lies below a chord. */
export interface EllipseBelow {
  readonly area: number;
  /** Moment of that area about the centre. */
  readonly moment: number;
  readonly chord: number;
}

const NOTHING: EllipseBelow = { area: 0, moment: 0, chord: 0 };

/** The part of an ellipse below a chord at height `at` from its centre. */
export function ellipseBelow(halfHeight: number, halfWidth: number, at: number): EllipseBelow {
  if (halfHeight === 0) return NOTHING;
  const t = Math.max(-1, Math.min(1, at / halfHeight));
  const root = Math.sqrt(1 - t * t);
  return {
    area: halfHeight * halfWidth * (0.5 * Math.PI + Math.asin(t) + t * root),
    moment: (-2 / 3) * halfHeight * halfHeight * halfWidth * root ** 3,
    chord: 2 * halfWidth * root,
  };
}
