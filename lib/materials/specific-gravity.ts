/**
 * Specific gravity of wood has three bases that must not be mixed: the oven-dry mass over the volume when green, at
 * 12 % moisture, or oven-dry.
 */
export const GRAVITY_BASES = ['green', 'at-12', 'oven-dry'] as const;
export type GravityBasis = (typeof GRAVITY_BASES)[number];

/** Fibre saturation, percent moisture, below which wood shrinks. Source: Wood Handbook ch. 4 (from memory). */
const FIBRE_SATURATION = 30;

/**
 * Specific gravity on the volume at `moisturePercent`, from that on the green volume. 0.40 green is 0.427 at 12 %.
 *
 * Throws RangeError unless 0 < gravity < 1.5 and 0 <= moisturePercent <= 30.
 * Source: G_M = G_b / (1 - 0.265 a G_b), a = (30 - M) / 30, Wood Handbook ch. 4 (from memory).
 */
export function gravityFromGreen(greenGravity: number, moisturePercent: number): number {
  requireGravity(greenGravity);
  requireMoisture(moisturePercent);
  return greenGravity / (1 - shrinkage(moisturePercent) * greenGravity);
}

/** The inverse of `gravityFromGreen`, same source and refusals. */
export function greenGravity(gravity: number, moisturePercent: number): number {
  requireGravity(gravity);
  requireMoisture(moisturePercent);
  return gravity / (1 + shrinkage(moisturePercent) * gravity);
}

/** Specific gravity at 12 % moisture from any basis. */
export function gravityAt12(gravity: number, basis: GravityBasis): number {
  switch (basis) {
    case 'at-12':
      requireGravity(gravity);
      return gravity;
    case 'green':
      return gravityFromGreen(gravity, 12);
    case 'oven-dry':
      return gravityFromGreen(greenGravity(gravity, 0), 12);
  }
}

/** Oven-dry specific gravity from that at 12 %, as the fastener codes use it. */
export function ovenDryGravity(gravity12: number): number {
  return gravityFromGreen(greenGravity(gravity12, 12), 0);
}

/**
 * Specific gravity at 12 % of wood that weighs `densityKgM3` as it lies at `moisturePercent`: 470.4 kg/m3 at 12 % is
 * 0.42. Between 12 % and another moisture the volume is corrected for shrinkage.
 */
export function gravity12FromDensity(densityKgM3: number, moisturePercent: number): number {
  const gravity = densityKgM3 / (1000 * (1 + moisturePercent / 100));
  return gravityFromGreen(greenGravity(gravity, moisturePercent), 12);
}

/** Density in kg/m3 as the wood lies at `moisturePercent`. */
export function densityAt(gravity12: number, moisturePercent: number): number {
  const gravity = gravityFromGreen(greenGravity(gravity12, 12), moisturePercent);
  return 1000 * gravity * (1 + moisturePercent / 100);
}

function shrinkage(moisturePercent: number): number {
  return (0.265 * (FIBRE_SATURATION - moisturePercent)) / FIBRE_SATURATION;
}

function requireGravity(gravity: number): void {
  if (!(gravity > 0 && gravity < 1.5)) throw new RangeError(`specific gravity must be in (0, 1.5), got ${gravity}`);
}

function requireMoisture(moisturePercent: number): void {
  if (!(moisturePercent >= 0 && moisturePercent <= FIBRE_SATURATION)) {
    throw new RangeError(`moisture must be in [0, 30] percent, got ${moisturePercent}`);
  }
}
