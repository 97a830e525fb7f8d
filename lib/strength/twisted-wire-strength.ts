import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { bendsAtAngle } from '@/lib/strength/bends-at-angle';
import type { StretchTable } from '@/lib/strength/best-stretch';
import type { BondBelief } from '@/lib/strength/bond-belief';
import { shearDiameterMm } from '@/lib/strength/bond-factors';
import { BOND_CARD, bondInputs, type GluedShank, kappaFor, unitBond } from '@/lib/strength/bond-pull-out';
import { coverCells } from '@/lib/strength/equivalent-cover';
import { between, type Estimate, type NoEstimate, noEstimate, scattered } from '@/lib/strength/estimate';
import { closedEye, openEye } from '@/lib/strength/eye-bending';
import { crushNPerMm, FIRST_BENDING_LOG_SD, firstBending } from '@/lib/strength/first-bending';
import { FOLD_OVER_CARD, foldOverN, type SideResistance, sideResistance } from '@/lib/strength/fold-over';
import { plasticMomentNmm, STAINLESS_MODULUS_MPA } from '@/lib/strength/ring-plastic';
import { type AnchorStrength, type FailureResult, governed } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { outsideGluedWireBox } from '@/lib/strength/validity-box';
import { wireInEye } from '@/lib/strength/wire-in-eye';
import { SPLITTING_CARD, SPLITTING_LOG_SD, splitting, splittingInputs } from '@/lib/strength/wood-splitting';

/** The glued part of a twisted-wire anchor. */
export function gluedShankOf(design: TwistedWireAnchor): GluedShank {
  return { ...design, wireDiameterMm: design.wire.diameterMm };
}

/** Strength of a twisted pair glued in a hole: bond, splitting, wire or eye; bending and ovalling beside them. */
export function twistedWireStrength(design: TwistedWireAnchor, settings: StrengthSettings): AnchorStrength {
  const eyeWays = eyeResults(design, settings);
  const sideways = firstBending(sidewaysShank(design), settings);
  const tables = tablesOf(design, settings);
  const ways: FailureResult[] = [
    ...gluedWays(tables, design, settings),
    ...eyeWays,
    { way: 'first-bending', role: 'serviceability', load: 'square', result: sideways },
  ];
  const straight = governed(ways, 'straight');
  return {
    ways,
    straight,
    atAngle: design.loadAngleDeg === 0 ? straight : governed(ways, 'at-angle'),
    bendsAtAngle: bendsAtAngle(straight, sideways, design.loadAngleDeg, settings),
    stretch: straight.kind === 'estimate' && tables.kind === 'tables' ? carryingStretch(tables) : null,
  };
}

/**
 * Height of the load above the wood: the ring bears on the middle of the eye, which stands a wire's thickness clear.
 * Half the bit stands for the wire, so that a thicker wire in the same hole never counts as the weaker.
 */
function loadArmMm(design: TwistedWireAnchor): number {
  return 0.5 * (design.eye.insideMm + design.bitDiameterMm);
}

function sidewaysShank(design: TwistedWireAnchor) {
  const { wire, bitDiameterMm, embedmentMm } = design;
  return {
    wood: design.wood,
    cover: design.cover,
    diameterMm: shearDiameterMm(2 * wire.diameterMm, bitDiameterMm),
    lengthMm: embedmentMm,
    armMm: loadArmMm(design),
    plasticNmm: 2 * plasticMomentNmm(wire.yieldMpa, wire.diameterMm),
    bendingNmm2: (2 * STAINLESS_MODULUS_MPA * Math.PI * wire.diameterMm ** 4) / 64,
  };
}

function eyeResults(design: TwistedWireAnchor, settings: StrengthSettings): readonly FailureResult[] {
  const { eye, wire, twistPitchMm } = design;
  if (!eye.isClosed) {
    return [{ way: 'eye-opens', role: 'ultimate', load: 'any', result: openEye(eye, wire, settings.lower) }];
  }
  return [
    { way: 'wire-in-eye', role: 'ultimate', load: 'any', result: wireInEye(wire, twistPitchMm, settings) },
    { way: 'eye-ovals', role: 'serviceability', load: 'any', result: closedEye(eye, wire, settings.lower) },
  ];
}

/** The two resistances of a glued shank below any depth. */
interface Tables {
  readonly kind: 'tables';
  readonly bond: StretchTable;
  readonly split: StretchTable;
  readonly belief: BondBelief;
  readonly shank: GluedShank;
  readonly side: SideResistance;
}

function gluedWays(
  tables: Tables | NoEstimate,
  design: TwistedWireAnchor,
  settings: StrengthSettings,
): readonly FailureResult[] {
  if (tables.kind === 'no-estimate') {
    return [
      { way: 'bond-pull-out', role: 'ultimate', load: 'straight', result: tables },
      { way: 'fold-over', role: 'ultimate', load: 'at-angle', result: tables },
    ];
  }
  const { bond, split, side } = tables;
  return [
    {
      way: 'bond-pull-out',
      role: 'ultimate',
      load: 'straight',
      result: bondEstimate(tables, bond.best(0).value, settings),
    },
    {
      way: 'wood-splitting',
      role: 'ultimate',
      load: 'straight',
      result: splitEstimate(tables, split.best(0).value, settings),
    },
    {
      way: side.tears ? 'tear-out' : 'fold-over',
      role: 'ultimate',
      load: 'at-angle',
      result: foldEstimate(tables, design.loadAngleDeg, settings),
    },
  ];
}

function tablesOf(design: TwistedWireAnchor, settings: StrengthSettings): Tables | NoEstimate {
  const shank = gluedShankOf(design);
  const { belief, cover } = design;
  const reasons = [
    ...outsideGluedWireBox({ ...shank, gravity12: design.wood.gravity12.value }),
    ...(cover !== null && cover.throughMm < design.embedmentMm ? (['shank-leaves-body'] as const) : []),
    ...(belief === null ? (['no-pulls-of-this-adhesive'] as const) : []),
  ];
  const bond = reasons.length === 0 ? unitBond(shank, settings.saturationMm) : null;
  if (bond === null || belief === null) return noEstimate(...reasons);
  const envelope = 2 * shank.wireDiameterMm;
  const crush = crushNPerMm(sidewaysShank(design), settings.endGrainBearing);
  return {
    kind: 'tables',
    bond,
    split: splitting(shank, settings.saturationMm),
    belief,
    shank,
    side: sideResistance(
      design.wood,
      crush,
      cover,
      shearDiameterMm(envelope, shank.bitDiameterMm),
      shank.bitDiameterMm,
    ),
  };
}

function bondEstimate({ belief, shank }: Tables, unitN: number, { lower, saturationMm }: StrengthSettings): Estimate {
  const kappa = kappaFor(belief, shank.wood, lower.z);
  const working = { card: BOND_CARD, inputs: bondInputs(shank, belief, saturationMm) };
  return between(kappa.median * unitN, kappa.lower * unitN, lower, working);
}

function splitEstimate({ shank, split }: Tables, medianN: number, { lower, saturationMm }: StrengthSettings): Estimate {
  const { fromMm, toMm } = split.best(0);
  const cover = coverOfStretch(shank, fromMm, toMm);
  const working = { card: SPLITTING_CARD, inputs: splittingInputs(shank, cover, saturationMm) };
  return scattered(medianN, Math.hypot(SPLITTING_LOG_SD, shank.wood.tensionPerpMpa.logSd), lower, working);
}

/** Least cover within a stretch, on the footing of a shank in endless wood. */
function coverOfStretch(shank: GluedShank, fromMm: number, toMm: number): number {
  const diameter = shearDiameterMm(2 * shank.wireDiameterMm, shank.bitDiameterMm);
  const { cover } = shank;
  if (cover === null) return 2.5 * diameter;
  const cells = coverCells(cover, toMm, diameter).slice(Math.floor(fromMm / cover.stepMm + 1e-9));
  return cells.length === 0 ? 0 : Math.min(...cells);
}

function foldEstimate(tables: Tables, angleDeg: number, settings: StrengthSettings): Estimate {
  const { bond, split, belief, shank, side } = tables;
  const { z } = settings.lower;
  const kappa = kappaFor(belief, shank.wood, z);
  const splitLower = Math.exp(-z * Math.hypot(SPLITTING_LOG_SD, shank.wood.tensionPerpMpa.logSd));
  const medianN = foldOverN(
    (from) => Math.min(kappa.median * bond.best(from).value, split.best(from).value),
    angleDeg,
    side,
  );
  const softer = Math.exp(-z * FIRST_BENDING_LOG_SD);
  // The lower value takes the lower bond and the softer mouth at once.
  const lowerN = foldOverN(
    (from) => Math.min(kappa.lower * bond.best(from).value, splitLower * split.best(from).value),
    angleDeg,
    { ...side, cells: side.cells.map((cell) => cell * softer) },
  );
  return between(medianN, lowerN, settings.lower, {
    card: FOLD_OVER_CARD,
    inputs: bondInputs(shank, belief, settings.saturationMm),
  });
}

function carryingStretch({ bond }: Tables) {
  const { fromMm, toMm } = bond.best(0);
  return { fromMm, toMm };
}
