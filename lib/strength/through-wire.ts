import { STEEPEST_TWIST_DEG, twistedPair } from '@/lib/geometry/twisted-pair';
import { derived } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { DOWEL_BEARING_SOURCE, dowelBearingMpa } from '@/lib/strength/dowel-bearing';
import { between, type Estimate, input, type NoEstimate, noEstimate, scattered } from '@/lib/strength/estimate';
import { type Eye, eyeRadiusMm } from '@/lib/strength/eye-bending';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { BEND_SOURCE, lowerBendShare } from '@/lib/strength/wire-in-eye';

export const THROUGH_WIRE_CARD: FormulaCard = {
  id: 'through-wire',
  title: 'The wire that runs through breaks',
  formula: 'R = A x tensile x cos(a) x bend',
  source: derived('One run of one strand from eye to eye; the load never passes through wood or glue'),
  assumptions: ['One strand per run, one wire from end to end', 'The slot or hole keeps the wire from springing out'],
  validity: '',
};

export const EYE_BEARING_CARD: FormulaCard = {
  id: 'eye-bearing',
  title: 'The eye beds into the wood',
  formula: 'F = bearing x d x width of the eye',
  source: derived('Bearing strength of the wood under the eye that stops the wire'),
  assumptions: ['A matter of slack in the wire, not of loss'],
  validity: '',
};

const BEARING_LOG_SD = 0.28;
const GEOMETRY = derived('Of the eye as drawn');

/** Load at which a through-wire breaks; `pitchMm` of its twist, or null for a straight run. Ultimate. */
export function throughWire(
  wire: ResolvedWire,
  pitchMm: number | null,
  settings: StrengthSettings,
): Estimate | NoEstimate {
  const twist = pitchMm === null ? null : twistedPair(wire.diameterMm, pitchMm);
  if (twist !== null && twist.strandAngleDeg > STEEPEST_TWIST_DEG) return noEstimate('twist-too-steep');
  const perMpa = (0.25 * Math.PI * wire.diameterMm ** 2) / (twist?.takeUp ?? 1);
  const { bendShare, lower } = settings;
  const lowerN = perMpa * wire.leastTensileMpa * lowerBendShare(settings);
  return between(perMpa * wire.tensileMpa * bendShare.central, lowerN, lower, {
    card: THROUGH_WIRE_CARD,
    inputs: [
      input('A', 'Wire', wire.diameterMm, 'wire-mm', derived('Area of one strand, pi d² / 4')),
      input('tensile', 'Tensile strength, middle of its range', wire.tensileMpa, 'MPa', wire.tensileSource),
      input('a', 'Angle of the strand', twist?.strandAngleDeg ?? 0, 'deg', derived('tan a = pi d / pitch')),
      input('bend', 'Left at the bend', bendShare.central, 'none', BEND_SOURCE),
    ],
  });
}

/** Load at which the eye that stops the wire beds into the wood. Serviceability. */
export function eyeBearing(wood: ResolvedWood, wire: ResolvedWire, eye: Eye, settings: StrengthSettings): Estimate {
  const width = 2 * eyeRadiusMm(eye, wire.diameterMm) + wire.diameterMm;
  const bearing = dowelBearingMpa(wood.gravity12.value);
  return scattered(bearing * wire.diameterMm * width, BEARING_LOG_SD, settings.lower, {
    card: EYE_BEARING_CARD,
    inputs: [
      input('bearing', 'Bearing strength of the wood', bearing, 'MPa', DOWEL_BEARING_SOURCE),
      input('d', 'Wire', wire.diameterMm, 'wire-mm', GEOMETRY),
      input('width', 'Width of the eye', width, 'mm', GEOMETRY),
    ],
  });
}
