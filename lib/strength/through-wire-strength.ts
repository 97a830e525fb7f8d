import type { ThroughWireAnchor } from '@/lib/strength/anchor-design';
import { closedEye, openEye } from '@/lib/strength/eye-bending';
import { type AnchorStrength, type FailureResult, governed } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { eyeBearing, throughWire } from '@/lib/strength/through-wire';

/** Strength of a wire that runs through: the wire itself at any angle, an open eye, and what only beds or ovals. */
export function throughWireStrength(design: ThroughWireAnchor, settings: StrengthSettings): AnchorStrength {
  const { wire, wood, eye, twistPitchMm } = design;
  const ways: FailureResult[] = [
    { way: 'through-wire', role: 'ultimate', load: 'any', result: throughWire(wire, twistPitchMm, settings) },
  ];
  if (eye.isClosed) {
    const result = closedEye(eye, wire, settings.lower);
    ways.push({ way: 'eye-ovals', role: 'serviceability', load: 'any', result });
  } else {
    ways.push({ way: 'eye-opens', role: 'ultimate', load: 'any', result: openEye(eye, wire, settings.lower) });
  }
  if (wood !== null) {
    const result = eyeBearing(wood, wire, eye, settings);
    ways.push({ way: 'eye-bearing', role: 'serviceability', load: 'straight', result });
  }
  const straight = governed(ways, 'straight');
  return { ways, straight, atAngle: straight, bendsAtAngle: null, stretch: null };
}
