import type { Estimate, NoEstimate, NoEstimateReason } from '@/lib/strength/estimate';

/** Every way an anchor can give way. */
export const FAILURE_WAYS = [
  'bond-pull-out',
  'wood-splitting',
  'wire-in-eye',
  'eye-opens',
  'fold-over',
  'tear-out',
  'screw-withdrawal',
  'screw-side',
  'screw-core',
  'screw-eye-stated',
  'through-wire',
  'eye-ovals',
  'eye-bearing',
  'first-bending',
] as const;
export type FailureWay = (typeof FAILURE_WAYS)[number];

/** One way of giving way. */
export interface FailureResult {
  readonly way: FailureWay;
  /** `ultimate`: what hangs on it is lost. `serviceability`: it bends or ovals, and holds on. */
  readonly role: 'ultimate' | 'serviceability';
  /** The load it is for: along the shank, at the design's angle, square to the shank, or whatever the angle. */
  readonly load: 'straight' | 'at-angle' | 'square' | 'any';
  readonly result: Estimate | NoEstimate;
}

/** The least of several ways. */
export interface Governed {
  readonly kind: 'estimate';
  readonly medianN: number;
  readonly lowerN: number;
  /** The way with the least lower value. */
  readonly governs: FailureWay;
}

/** The stretch of a glued shank that carries, and its least cover on the footing of a shank in endless wood. */
export interface CarryingStretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** What an anchor carries. */
export interface AnchorStrength {
  readonly ways: readonly FailureResult[];
  /** Pulled along the shank: the least ultimate. No estimate if any ultimate way has none. */
  readonly straight: Governed | NoEstimate;
  /** Pulled at the design's angle, ultimate. */
  readonly atAngle: Governed | NoEstimate;
  /** Pulled at the design's angle: when the shank first bends visibly. Serviceability; null for a wire without a shank. */
  readonly bendsAtAngle: Estimate | NoEstimate | null;
  /** Of a glued shank with an estimate. */
  readonly stretch: CarryingStretch | null;
}

/** The least of the ultimate ways for a load; the reasons of all that have no estimate if any has none. */
export function governed(ways: readonly FailureResult[], load: 'straight' | 'at-angle'): Governed | NoEstimate {
  const reasons: NoEstimateReason[] = [];
  let medianN = Number.POSITIVE_INFINITY;
  let lowerN = Number.POSITIVE_INFINITY;
  let governs: FailureWay | null = null;
  for (const { way, role, load: ofLoad, result } of ways) {
    if (role !== 'ultimate' || (ofLoad !== load && ofLoad !== 'any')) continue;
    if (result.kind === 'no-estimate') {
      reasons.push(...result.reasons);
      continue;
    }
    if (governs === null || result.lowerN < lowerN) governs = way;
    medianN = Math.min(medianN, result.medianN);
    lowerN = Math.min(lowerN, result.lowerN);
  }
  if (reasons.length > 0 || governs === null) return { kind: 'no-estimate', reasons: [...new Set(reasons)] };
  return { kind: 'estimate', medianN, lowerN, governs };
}
