import { STEEPEST_TWIST_DEG, twistedPair } from '@/lib/geometry/twisted-pair';
import { chosen, derived } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import { between, type Estimate, input, type NoEstimate, noEstimate } from '@/lib/strength/estimate';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

export const WIRE_IN_EYE_CARD: FormulaCard = {
  id: 'wire-in-eye',
  title: 'The wire breaks in the eye',
  formula: 'R = 2 x A x tensile x cos(a) x bend',
  source: derived('Two strands of a helix at the angle a share the load; the bend over ring or hook takes its share'),
  assumptions: ['A closed, twisted eye: both legs carry', 'The wire is sound: not nicked by the pliers, not corroded'],
  validity: 'Twist up to 45°, where the strands lock',
};

export const BEND_SOURCE = chosen('0.6 to 0.9 by charts for rope over sheaves, from memory; a pull test tells');

/** What is left at a bend with all but the lower share: the box of the setting is taken to hold 90 of 100. */
export function lowerBendShare({ bendShare, lower }: StrengthSettings): number {
  const logSd = Math.log(bendShare.high / bendShare.low) / (2 * 1.6449);
  return Math.min(bendShare.central, bendShare.central * Math.exp(-lower.z * logSd));
}

/** Breaking load of one straight strand at the least tensile strength, N: .041 in spring wire 1615 N (363 lbf). */
export function strandBreakN(wire: ResolvedWire): number {
  return 0.25 * Math.PI * wire.diameterMm ** 2 * wire.leastTensileMpa;
}

/**
 * Load at which the wire of a closed twisted eye breaks. No estimate for a twist steeper than 45 degrees.
 *
 * Throws RangeError unless `pitchMm`, the axial length of one full turn, is positive.
 */
export function wireInEye(wire: ResolvedWire, pitchMm: number, settings: StrengthSettings): Estimate | NoEstimate {
  const { strandAngleDeg, takeUp } = twistedPair(wire.diameterMm, pitchMm);
  if (strandAngleDeg > STEEPEST_TWIST_DEG) return noEstimate('twist-too-steep');
  const area = 0.25 * Math.PI * wire.diameterMm ** 2;
  const perMpa = (2 * area) / takeUp;
  const { bendShare, lower } = settings;
  const medianN = perMpa * wire.tensileMpa * bendShare.central;
  // The lower value takes the least tensile strength and the lower bend at once.
  return between(medianN, perMpa * wire.leastTensileMpa * lowerBendShare(settings), lower, {
    card: WIRE_IN_EYE_CARD,
    inputs: [
      input('A', 'Wire', wire.diameterMm, 'wire-mm', derived('Area of one strand, pi d² / 4')),
      input('tensile', 'Tensile strength, middle of its range', wire.tensileMpa, 'MPa', wire.tensileSource),
      input('a', 'Angle of the strands', strandAngleDeg, 'deg', derived('tan a = pi d / pitch')),
      input('bend', 'Left at the bend', bendShare.central, 'none', BEND_SOURCE),
    ],
  });
}
