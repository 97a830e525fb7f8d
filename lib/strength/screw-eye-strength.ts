import { type FigureSource, OWN_FIGURE } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ScrewEyeAnchor } from '@/lib/strength/anchor-design';
import { bendsAtAngle } from '@/lib/strength/bends-at-angle';
import { between, type Estimate, input, type NoEstimate, noEstimate } from '@/lib/strength/estimate';
import { closedEye, openEye } from '@/lib/strength/eye-bending';
import { firstBending } from '@/lib/strength/first-bending';
import { hankinson } from '@/lib/strength/load-angle';
import { plasticMomentNmm, STAINLESS_MODULUS_MPA } from '@/lib/strength/ring-plastic';
import { screwCore, screwEyeWithdrawal } from '@/lib/strength/screw-eye';
import { type AnchorStrength, type FailureResult, governed } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

export const STATED_STRENGTH_CARD: FormulaCard = {
  id: 'stated-strength',
  title: 'The strength its maker states',
  formula: 'R as stated',
  source: OWN_FIGURE,
  assumptions: ['Taken as the load that all but one in twenty carry; the median 15 % above it'],
  validity: '',
};

/** Scatter of a bought fitting round its statement. Chosen. */
const STATED_LOG_SD = 0.085;
/** Plain wire of a bought screw eye when nothing is known of it: soft steel, which bends at 240 MPa. Chosen. */
const SOFT_STEEL_YIELD_MPA = 240;
const CORE_SHARE = 0.7;

/** An estimate from a stated strength, taken as its lower value. */
export function statedStrength(statedN: number, settings: StrengthSettings, source: FigureSource): Estimate {
  return between(statedN * Math.exp(settings.lower.z * STATED_LOG_SD), statedN, settings.lower, {
    card: STATED_STRENGTH_CARD,
    inputs: [input('R', 'Strength as stated', statedN, 'N', source)],
  });
}

/** Strength of a screw eye: withdrawal, its core, its eye; sideways by the same rule as the code's. */
export function screwEyeStrength(design: ScrewEyeAnchor, settings: StrengthSettings): AnchorStrength {
  const { wood, threadDiameterMm, threadMm, cover, loadAngleDeg } = design;
  const shank = { wood, threadDiameterMm, threadMm, grainAngleDeg: cover?.grainAngleDeg ?? 90 };
  const out = screwEyeWithdrawal(shank, settings.lower);
  const sideways = firstBending(sidewaysShank(design), settings);
  const ways: FailureResult[] = [
    { way: 'screw-withdrawal', role: 'ultimate', load: 'straight', result: out },
    { way: 'screw-side', role: 'ultimate', load: 'at-angle', result: aslant(out, sideways, loadAngleDeg, settings) },
    { way: 'first-bending', role: 'serviceability', load: 'square', result: sideways },
    ...metalWays(design, settings),
  ];
  const straight = governed(ways, 'straight');
  return {
    ways,
    straight,
    atAngle: loadAngleDeg === 0 ? straight : governed(ways, 'at-angle'),
    bendsAtAngle: bendsAtAngle(straight, sideways, loadAngleDeg, settings),
    stretch: null,
  };
}

/** A screw has no wire to fold over and hang on by: sideways it is at its end where it bends. */
function aslant(out: Estimate, side: Estimate, angleDeg: number, settings: StrengthSettings): Estimate {
  const at = (straightN: number, sideN: number) => hankinson(straightN, Math.min(straightN, sideN), angleDeg);
  return between(at(out.medianN, side.medianN), at(out.lowerN, side.lowerN), settings.lower, side.working);
}

function sidewaysShank(design: ScrewEyeAnchor) {
  const core = CORE_SHARE * design.threadDiameterMm;
  const yieldMpa = design.wire?.yieldMpa ?? SOFT_STEEL_YIELD_MPA;
  return {
    wood: design.wood,
    cover: design.cover,
    diameterMm: design.threadDiameterMm,
    lengthMm: design.threadMm,
    armMm: 0.5 * (design.eye?.insideMm ?? 2 * design.threadDiameterMm) + design.threadDiameterMm,
    plasticNmm: plasticMomentNmm(yieldMpa, core),
    bendingNmm2: (STAINLESS_MODULUS_MPA * Math.PI * core ** 4) / 64,
  };
}

/** The eye's own metal: as its maker states, else of its wire; not known if neither is given. */
function metalWays(design: ScrewEyeAnchor, settings: StrengthSettings): readonly FailureResult[] {
  const { statedStrengthN, wire, eye, threadDiameterMm } = design;
  if (statedStrengthN !== null) {
    const result = statedStrength(statedStrengthN, settings, OWN_FIGURE);
    return [{ way: 'screw-eye-stated', role: 'ultimate', load: 'any', result }];
  }
  const missing: NoEstimate = noEstimate(wire === null ? 'strength-not-known' : 'eye-not-known');
  if (wire === null || eye === null) return [{ way: 'eye-opens', role: 'ultimate', load: 'any', result: missing }];
  const core: FailureResult = {
    way: 'screw-core',
    role: 'ultimate',
    load: 'any',
    result: screwCore(threadDiameterMm, wire, settings.lower),
  };
  if (eye.isClosed) {
    return [
      core,
      { way: 'eye-ovals', role: 'serviceability', load: 'any', result: closedEye(eye, wire, settings.lower) },
    ];
  }
  return [core, { way: 'eye-opens', role: 'ultimate', load: 'any', result: openEye(eye, wire, settings.lower) }];
}
