import { derived, type FigureSource } from '@/lib/materials/figure-source';
import { poundsForce, psi } from '@/lib/units/force-and-length';

export type WoodGroup = 'hardwood' | 'softwood';
export const WOOD_GROUPS = ['hardwood', 'softwood'] as const;

/** Properties that follow specific gravity well enough to be estimated from it. */
export type RegressedProperty = 'shear' | 'tensionPerp' | 'hardness' | 'compressionPerp' | 'compressionParallel';

interface Fit {
  /** psi, or lbf for hardness, at specific gravity 1. */
  readonly front: number;
  readonly power: number;
  /** Standard deviation of the logarithm round the fit. */
  readonly logSd: number;
}

const FITS: Readonly<Record<WoodGroup, Readonly<Record<RegressedProperty, Fit>>>> = {
  hardwood: {
    shear: { front: 3680, power: 1.31, logSd: 0.125 },
    tensionPerp: { front: 2003, power: 1.7, logSd: 0.16 },
    hardness: { front: 3993, power: 2.28, logSd: 0.1 },
    compressionPerp: { front: 3106, power: 2.11, logSd: 0.16 },
    compressionParallel: { front: 11376, power: 0.92, logSd: 0.1 },
  },
  softwood: {
    shear: { front: 2246, power: 0.83, logSd: 0.11 },
    tensionPerp: { front: 1051, power: 1.32, logSd: 0.2 },
    hardness: { front: 1963, power: 1.54, logSd: 0.08 },
    compressionPerp: { front: 2246, power: 1.52, logSd: 0.13 },
    compressionParallel: { front: 15170, power: 1.09, logSd: 0.07 },
  },
};

/** Below this the fits reach beyond the woods they were made on: within about 30 %. */
const FITTED_FROM = 0.3;
const BEYOND_LOG_SD = 0.3 / 1.645;

export const REGRESSION_SOURCE: FigureSource = derived(
  'Log-log fit to 49 rows of Wood Handbook Tables 5-3 at 12 % moisture, specific gravity 0.31 to 0.65',
);

export interface RegressedFigure {
  /** MPa, or N for hardness. */
  readonly value: number;
  /** Standard deviation of its logarithm. */
  readonly logSd: number;
}

/**
 * A property of clear wood at 12 % moisture estimated from specific gravity alone: a hardwood of 0.28 has a shear
 * strength of about 694 psi. Under 0.30 the scatter is taken as 30 % at 90 % confidence.
 */
export function regressedProperty(property: RegressedProperty, group: WoodGroup, gravity12: number): RegressedFigure {
  const { front, power, logSd } = FITS[group][property];
  const figure = front * gravity12 ** power;
  return {
    value: property === 'hardness' ? poundsForce(figure) : psi(figure),
    logSd: gravity12 < FITTED_FROM ? Math.max(logSd, BEYOND_LOG_SD) : logSd,
  };
}
