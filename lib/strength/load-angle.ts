/**
 * Two ways of putting a straight and a square-loaded strength together at an angle between; `angleDeg` is from the
 * shank's axis, 0 straight to 90 square. Both give the straight strength at 0 and the square one at 90.
 */

/** (F cos a / P)^2 + (F sin a / Q)^2 = 1. Source: EN 1995-1-1 (8.28) for screws and bonded fasteners (from memory). */
export function quadraticCombination(straightN: number, squareN: number, angleDeg: number): number {
  const { cosine, sine } = parts(angleDeg);
  return 1 / Math.hypot(cosine / straightN, sine / squareN);
}

/**
 * P Q / (P sin^2 a + Q cos^2 a): 5540 and 500 at 45 degrees give 917.2. Source: Hankinson, Wood Handbook Eq. 8-16
 * (read); NDS 12.4.1 has the same form for withdrawal and side load (from memory).
 */
export function hankinson(straightN: number, squareN: number, angleDeg: number): number {
  const { cosine, sine } = parts(angleDeg);
  return (straightN * squareN) / (straightN * sine ** 2 + squareN * cosine ** 2);
}

function parts(angleDeg: number): { cosine: number; sine: number } {
  if (!(angleDeg >= 0 && angleDeg <= 90)) throw new RangeError(`a load angle must be 0 to 90 degrees, got ${angleDeg}`);
  const angle = (angleDeg * Math.PI) / 180;
  return { cosine: Math.cos(angle), sine: Math.sin(angle) };
}
