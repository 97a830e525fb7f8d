/** Moisture at which strength stops rising with drying, unless the species has its own. */
export const USUAL_INTERSECTION_PERCENT = 25;

/**
 * A strength at `moisturePercent` from those at 12 % and green. Printed example: 103,000 at 12 %, 66,000 green,
 * intersection 24, at 8 %: 119,500.
 *
 * Not for tension across the grain. At and above the intersection the green value holds.
 * Throws RangeError unless both strengths are positive and 0 < intersection, 12 < intersection.
 * Source: Wood Handbook Eq. 5-3 (read).
 */
export function strengthAtMoisture(
  at12: number,
  green: number,
  moisturePercent: number,
  intersectionPercent = USUAL_INTERSECTION_PERCENT,
): number {
  if (!(at12 > 0 && green > 0 && intersectionPercent > 12)) {
    throw new RangeError(`strengthAtMoisture needs positive strengths, got ${at12}, ${green}, ${intersectionPercent}`);
  }
  if (moisturePercent >= intersectionPercent) return green;
  return at12 * (at12 / green) ** ((12 - moisturePercent) / (intersectionPercent - 12));
}
