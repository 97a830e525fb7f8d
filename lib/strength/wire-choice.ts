import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { USUAL_INTERFERENCE_MM } from '@/lib/strength/bond-factors';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { inches } from '@/lib/units/force-and-length';

/** A wire that the shop has or could buy. */
export interface WireChoice {
  readonly id: string;
  readonly name: string;
  readonly wire: ResolvedWire;
}

const SIXTY_FOURTH_MM = inches(1 / 64);

/** The usual bit for a twisted pair: the greatest 64th that the pair does not exceed by more than usual, or fills. */
export function usualBitMm(wireDiameterMm: number): number {
  const envelope = 2 * wireDiameterMm;
  const under = Math.floor(envelope / SIXTY_FOURTH_MM + 1e-9);
  const isTight = envelope - under * SIXTY_FOURTH_MM <= USUAL_INTERFERENCE_MM;
  return (isTight ? under : under + 1) * SIXTY_FOURTH_MM;
}

/** A design with another wire and the bit that goes with it; the twist keeps its angle. */
export function withWire(design: TwistedWireAnchor, { wire }: WireChoice): TwistedWireAnchor {
  const bitDiameterMm = Math.max(usualBitMm(wire.diameterMm), design.bitDiameterMm);
  const twistPitchMm = design.twistPitchMm * Math.max(1, wire.diameterMm / design.wire.diameterMm);
  return { ...design, wire, bitDiameterMm, twistPitchMm };
}

/** The thinnest of the wires with which the anchor holds `neededN` at its angle, or null. */
export function leastWire(
  design: TwistedWireAnchor,
  choices: readonly WireChoice[],
  neededN: number,
  settings: StrengthSettings,
): WireChoice | null {
  const byDiameter = [...choices].sort(
    (a, b) => a.wire.diameterMm - b.wire.diameterMm || a.wire.leastTensileMpa - b.wire.leastTensileMpa,
  );
  return (
    byDiameter.find((choice) => {
      const { atAngle } = anchorStrength(withWire(design, choice), settings);
      return atAngle.kind === 'estimate' && atAngle.lowerN >= neededN;
    }) ?? null
  );
}
