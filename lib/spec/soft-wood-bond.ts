import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import { kappaFor, unitBond } from '@/lib/strength/bond-pull-out';

/** Lower value of a bond at the shop's least depth in ample wood, N; null where it cannot be told. */
export function softWoodBondN({ anchor, of }: AnchorFacts, wood: ResolvedWood, settings: SpecSettings): number | null {
  const { wireDiameterMm, bitDiameterMm } = anchor;
  const belief = of.bond?.belief ?? null;
  if (wireDiameterMm === null || bitDiameterMm === null || belief === null) return null;
  const shank = {
    wood,
    wireDiameterMm,
    bitDiameterMm,
    embedmentMm: settings.leastEmbedmentMm,
    voidMm: 0,
    cover: null,
    temperatureC: settings.serviceTemperatureC,
  };
  const { saturationMm, lower } = settings.strength;
  const unit = unitBond(shank, saturationMm)?.best(0).value ?? null;
  return unit === null ? null : kappaFor(belief, wood, lower.z).lower * unit;
}
