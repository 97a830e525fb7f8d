import { type GluedShank, unitBond } from '@/lib/strength/bond-pull-out';
import type { KappaReading } from '@/lib/strength/kappa-posterior';

/** How a pulled specimen gave way. */
export const PULL_FAILURES = [
  'slid-out',
  'wood-sleeve',
  'split',
  'tore-out',
  'wire-broke',
  'eye-opened',
  'jig-failed',
] as const;
export type PullFailure = (typeof PULL_FAILURES)[number];

/** Failures of the bond itself; whatever else gave way first only says that the bond carries at least as much. */
const BOND_FAILURES: readonly PullFailure[] = ['slid-out', 'wood-sleeve'];

/** One pull along the shank, with the specimen as it was made. */
export interface PullReading {
  readonly loadN: number;
  readonly failure: PullFailure;
  /** The pull was stopped, or the scale topped out. */
  readonly isLowerBound: boolean;
  /** Why it does not count; null: it counts. */
  readonly excludedReason: string | null;
  readonly specimen: GluedShank;
}

/**
 * What a pull says of kappa; null for an excluded one, a load that is not positive, and a specimen of which the bond
 * formula says nothing.
 */
export function kappaReading(pull: PullReading, saturationMm: number): KappaReading | null {
  if (pull.excludedReason !== null || !(pull.loadN > 0 && Number.isFinite(pull.loadN))) return null;
  const unitN = unitBond(pull.specimen, saturationMm)?.best(0).value ?? 0;
  if (!(unitN > 0)) return null;
  return {
    logKappa: Math.log(pull.loadN / unitN),
    isLowerBound: pull.isLowerBound || !BOND_FAILURES.includes(pull.failure),
  };
}
