import { NO_STRENGTH_FROM_C } from '@/lib/strength/bond-factors';
import type { NoEstimateReason } from '@/lib/strength/estimate';
import { inches } from '@/lib/units/force-and-length';

/**
 * Where the estimate of a glued wire may be used: one anchor, cured, dry, within these. Chosen, round the practice
 * value it is anchored to; every published formula was fitted on rods of 3 mm and more.
 */
export const GLUED_WIRE_BOX = {
  wireMm: { low: inches(0.02), high: inches(0.062) },
  embedmentMm: { low: inches(0.19) - 0.1, high: inches(1.5) },
  gravity12: { low: 0.15, high: 0.7 },
} as const;

export const GLUED_WIRE_BOX_TEXT =
  'Wire .020 to .062 in, 3/16 to 1 1/2 in of glued shank, specific gravity 0.15 to 0.70, one anchor, cured, dry, to 60 °C';

export interface GluedWireCase {
  readonly wireDiameterMm: number;
  readonly embedmentMm: number;
  readonly gravity12: number;
  readonly temperatureC: number;
}

/** What of a case lies outside the box; nothing: the estimate may be used. */
export function outsideGluedWireBox(of: GluedWireCase): readonly NoEstimateReason[] {
  const { wireMm, embedmentMm, gravity12 } = GLUED_WIRE_BOX;
  const reasons: NoEstimateReason[] = [];
  if (!isWithin(of.wireDiameterMm, wireMm)) reasons.push('wire-diameter-outside');
  if (!isWithin(of.embedmentMm, embedmentMm)) reasons.push('embedment-outside');
  if (!isWithin(of.gravity12, gravity12)) reasons.push('gravity-outside');
  if (!(of.temperatureC <= NO_STRENGTH_FROM_C)) reasons.push('too-warm');
  return reasons;
}

/** A millionth of slack for sizes that were typed in inches. */
function isWithin(value: number, range: { readonly low: number; readonly high: number }): boolean {
  return value >= range.low * (1 - 1e-6) && value <= range.high * (1 + 1e-6);
}
