/** What a data sheet says of the two parts of a glue or a coat. Absent: it does not say. */
export interface PartsSheet {
  readonly ratio?: { readonly partsA: number; readonly partsB: number; readonly basis: 'mass' | 'volume' };
  /** g/mL. */
  readonly densityA?: number;
  readonly densityB?: number;
}

export type MassRatio =
  /** Grams of A for one gram of B. */
  | { readonly ok: true; readonly aPerB: number; readonly basis: 'mass' | 'volume' }
  /** Nothing to weigh out by: a one-part product, or a ratio that is still to be entered. */
  | { readonly ok: false; readonly code: 'no-ratio' }
  /** The ratio is one of volumes, and weighing it as it stands would be wrong: enter both densities first. */
  | { readonly ok: false; readonly code: 'volume-ratio-without-densities'; readonly aPerBByVolume: number };

/**
 * How many grams of A go with one gram of B. A ratio by volume is turned into one by mass through the densities of the
 * parts; without them it is refused and never weighed as if it were one by mass.
 *
 * Throws RangeError unless all figures given are positive.
 * Source: m = rho V (derived). 2 : 1 by volume with 1.15 and 0.97 g/mL is 2.3711 : 1 by mass.
 */
export function massRatio({ ratio, densityA, densityB }: PartsSheet): MassRatio {
  if (ratio === undefined) return { ok: false, code: 'no-ratio' };
  for (const figure of [ratio.partsA, ratio.partsB, densityA ?? 1, densityB ?? 1]) {
    if (!(figure > 0 && Number.isFinite(figure)))
      throw new RangeError(`massRatio needs positive figures, got ${figure}`);
  }
  const stated = ratio.partsA / ratio.partsB;
  if (ratio.basis === 'mass') return { ok: true, aPerB: stated, basis: 'mass' };
  if (densityA === undefined || densityB === undefined) {
    return { ok: false, code: 'volume-ratio-without-densities', aPerBByVolume: stated };
  }
  return { ok: true, aPerB: (stated * densityA) / densityB, basis: 'volume' };
}

/** Density of the mixed glue, g/mL, or null where a part's density or the ratio is not known. */
export function mixedDensity(sheet: PartsSheet): number | null {
  const { densityA, densityB } = sheet;
  const ratio = massRatio(sheet);
  if (densityA === undefined || densityB === undefined || !ratio.ok) return null;
  return (ratio.aPerB + 1) / (ratio.aPerB / densityA + 1 / densityB);
}

export type WeighedCheck =
  | { readonly ok: true; readonly errorShare: number }
  | { readonly ok: false; readonly code: 'ratio-off'; readonly errorShare: number }
  /** The two masses stand to each other as the volumes should: somebody weighed a ratio by volume. */
  | { readonly ok: false; readonly code: 'volume-ratio-weighed'; readonly errorShare: number }
  | Extract<MassRatio, { ok: false }>;

/**
 * Judges two masses that were weighed, against the sheet. `errorShare` is how far A to B lies above (+) or below (-)
 * what it should be: 2 : 1 weighed for 2.371 : 1 is -0.157.
 *
 * Throws RangeError unless both masses are positive.
 */
export function checkWeighed(sheet: PartsSheet, massAG: number, massBG: number, tolerance: number): WeighedCheck {
  if (!(massAG > 0 && massBG > 0)) throw new RangeError(`checkWeighed needs two masses, got ${massAG}, ${massBG}`);
  const ratio = massRatio(sheet);
  if (!ratio.ok) return ratio;
  const errorShare = massAG / massBG / ratio.aPerB - 1;
  if (Math.abs(errorShare) <= tolerance) return { ok: true, errorShare };
  const byVolume = sheet.ratio === undefined ? Number.NaN : sheet.ratio.partsA / sheet.ratio.partsB;
  const isVolume = ratio.basis === 'volume' && Math.abs(massAG / massBG / byVolume - 1) <= tolerance;
  return { ok: false, code: isVolume ? 'volume-ratio-weighed' : 'ratio-off', errorShare };
}

/**
 * How far A to B may be off where the sheet does not say: 5 % up to 2 : 1, 3 % for more lopsided ratios.
 * Source: chosen; sheets of laminating systems allow about 3 %, common guides 2 to 5 %.
 */
export function commonTolerance(aPerB: number): number {
  return Math.max(aPerB, 1 / aPerB) <= 2.5 ? 0.05 : 0.03;
}
