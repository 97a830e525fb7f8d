import { chosen, derived, published } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { type Estimate, input, type LowerShare, scattered } from '@/lib/strength/estimate';
import { ULTIMATE_WITHDRAWAL_SOURCE, woodScrewWithdrawalN } from '@/lib/strength/fastener-withdrawal';

export const SCREW_EYE_CARD: FormulaCard = {
  id: 'screw-eye-withdrawal',
  title: 'The screw eye pulls out of the wood',
  formula: 'R = 108.25 x G² x D x L x grain',
  source: published('Wood Handbook Eq. 8-10 for wood screws; 0.75 in end grain from secondary texts'),
  assumptions: [
    'A screw eye counts as a wood screw of its outside thread diameter over the thread that is truly in the wood',
    'A lead hole as for a screw; end grain holds about three quarters and is erratic',
  ],
  validity: '',
};

export const SCREW_CORE_CARD: FormulaCard = {
  id: 'screw-eye-core',
  title: 'The core of the screw eye breaks',
  formula: 'R = pi / 4 x (0.7 D)² x tensile',
  source: derived('Area inside the thread; 0.7 of its outside diameter chosen'),
  assumptions: [],
  validity: '',
};

/** Scatter of withdrawal: specific gravity squared, and workmanship. Chosen. */
const WITHDRAWAL_LOG_SD = 0.25;
/** More erratic in end grain. Chosen. */
const END_GRAIN_LOG_SD = 0.35;
const END_GRAIN_SHARE = 0.75;
const CORE_SHARE = 0.7;
const CORE_LOG_SD = 0.1;
const THREAD = derived('Of the screw eye');

/** A threaded shank in wood. */
export interface ScrewedShank {
  readonly wood: ResolvedWood;
  readonly threadDiameterMm: number;
  /** Full thread in the wood. */
  readonly threadMm: number;
  /** Between the shank and the grain: 0 in end grain, 90 across. */
  readonly grainAngleDeg: number;
}

/** Load at which a screw eye withdraws: D 0.105 in, 1/2 in of thread, G 0.42, side grain: 145.4 lbf. */
export function screwEyeWithdrawal(shank: ScrewedShank, lower: LowerShare): Estimate {
  const { wood, threadDiameterMm, threadMm, grainAngleDeg } = shank;
  const gravity = wood.gravity12;
  const sideGrain = woodScrewWithdrawalN({ gravity: gravity.value, diameterMm: threadDiameterMm, lengthMm: threadMm });
  const across = Math.sin((grainAngleDeg * Math.PI) / 180) ** 2;
  const grain = END_GRAIN_SHARE + (1 - END_GRAIN_SHARE) * across;
  const logSd = END_GRAIN_LOG_SD + (WITHDRAWAL_LOG_SD - END_GRAIN_LOG_SD) * across;
  return scattered(sideGrain * grain, logSd, lower, {
    card: SCREW_EYE_CARD,
    inputs: [
      input('G', 'Specific gravity at 12 %', gravity.value, 'none', gravity.source),
      input('D', 'Outside diameter of the thread', threadDiameterMm, 'wire-mm', THREAD),
      input('L', 'Full thread in the wood', threadMm, 'mm', THREAD),
      input('grain', 'Share left by the direction of grain', grain, 'none', ULTIMATE_WITHDRAWAL_SOURCE),
    ],
  });
}

/** Load at which the core inside the thread breaks. */
export function screwCore(threadDiameterMm: number, wire: ResolvedWire, lower: LowerShare): Estimate {
  const core = CORE_SHARE * threadDiameterMm;
  const load = 0.25 * Math.PI * core * core * wire.leastTensileMpa;
  return scattered(load, CORE_LOG_SD, lower, {
    card: SCREW_CORE_CARD,
    inputs: [
      input('0.7 D', 'Core', core, 'wire-mm', chosen('0.7 of the outside thread')),
      input('tensile', 'Least tensile strength of its wire', wire.leastTensileMpa, 'MPa', wire.tensileSource),
    ],
  });
}
