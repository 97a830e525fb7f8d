import { derived } from '@/lib/materials/figure-source';
import type { FormulaCard, FormulaInput } from '@/lib/materials/formula-card';
import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import { openEyeStresses } from '@/lib/strength/curved-beam';
import { type Estimate, input, type LowerShare, scattered } from '@/lib/strength/estimate';
import { closedRingOvalsN, openEyeOpensN, ringUnderPull, STAINLESS_MODULUS_MPA } from '@/lib/strength/ring-plastic';

export const OPEN_EYE_CARD: FormulaCard = {
  id: 'eye-opens',
  title: 'The open eye bends open',
  formula: 'N R = M_p cos³f with N = N_p (2/pi)(f + sin f cos f)',
  source: derived('One plastic hinge opposite the gap, with tension in the wire'),
  assumptions: ['The eye is open: only one leg carries', 'Ultimate: what hangs in the eye comes out'],
  validity: '',
};

export const CLOSED_EYE_CARD: FormulaCard = {
  id: 'eye-ovals',
  title: 'The closed eye pulls oval',
  formula: 'P = 4 M_p / R, M_p = yield x d³ / 6',
  source: derived('Four plastic hinges in a thin ring'),
  assumptions: ['A matter of looks and fit, not of loss: the legs straighten and carry on'],
  validity: '',
};

/** Scatter of bent wire: yield strength and shape of a hand-made eye. Chosen. */
const EYE_LOG_SD = 0.15;

/** An eye bent from round wire. */
export interface Eye {
  readonly insideMm: number;
  readonly isClosed: boolean;
}

/** Radius of an eye to the middle of its wire. */
export function eyeRadiusMm(eye: Eye, wireDiameterMm: number): number {
  return 0.5 * (eye.insideMm + wireDiameterMm);
}

/** Load at which an open eye bends open. Ultimate. */
export function openEye(eye: Eye, wire: ResolvedWire, lower: LowerShare): Estimate {
  const load = openEyeOpensN(wire.yieldMpa, wire.diameterMm, eyeRadiusMm(eye, wire.diameterMm));
  return scattered(load, EYE_LOG_SD, lower, {
    card: OPEN_EYE_CARD,
    inputs: eyeInputs(eye, wire, openEyeYieldsN(eye, wire)),
  });
}

/** Load at which a closed eye ovals for good. Serviceability. */
export function closedEye(eye: Eye, wire: ResolvedWire, lower: LowerShare): Estimate {
  const load = closedRingOvalsN(wire.yieldMpa, wire.diameterMm, eyeRadiusMm(eye, wire.diameterMm));
  return scattered(load, EYE_LOG_SD, lower, {
    card: CLOSED_EYE_CARD,
    inputs: eyeInputs(eye, wire, closedEyeYieldsN(eye, wire)),
  });
}

const ELASTIC = derived('Curved beam (open) or thin elastic ring (closed)');
const HAND_MADE = derived('Of the eye as drawn');

/** Load at which the inside of an open eye first yields. */
function openEyeYieldsN(eye: Eye, wire: ResolvedWire): number {
  return wire.yieldMpa / openEyeStresses(eyeRadiusMm(eye, wire.diameterMm), wire.diameterMm, 1).insideMpa;
}

/** Load at which the wire of a closed eye first yields where the load sits. */
function closedEyeYieldsN(eye: Eye, wire: ResolvedWire): number {
  const modulus = (Math.PI * wire.diameterMm ** 3) / 32;
  const perN = ringUnderPull(1, eyeRadiusMm(eye, wire.diameterMm), wire.diameterMm, STAINLESS_MODULUS_MPA).atLoadNmm;
  return (wire.yieldMpa * modulus) / perN;
}

function eyeInputs(eye: Eye, wire: ResolvedWire, yieldsN: number): readonly FormulaInput[] {
  return [
    input('d', 'Wire', wire.diameterMm, 'wire-mm', HAND_MADE),
    input('R', 'Radius of the eye to the middle of its wire', eyeRadiusMm(eye, wire.diameterMm), 'mm', HAND_MADE),
    input('yield', 'Yield strength', wire.yieldMpa, 'MPa', wire.yieldSource),
    input('P_y', 'Load at which its most stressed fibre first yields', yieldsN, 'N', ELASTIC),
  ];
}
