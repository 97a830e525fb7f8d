import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { SpecSettings } from '@/lib/spec/spec-settings';

/** A depth that misses a multiple by rounding still is that multiple. */
const ROUNDING = 1e-9;

/** The least whole multiple of the shop's increment that is no less than `depthMm`. */
export function roundedUpMm(depthMm: number, { incrementMm }: SpecSettings): number {
  return Math.ceil(depthMm / incrementMm - ROUNDING) * incrementMm;
}

/** How deep an anchor's hole may go and leave the wood that must stay under it; null: where it goes is not known. */
export function deepestHoleMm({ of: { path } }: AnchorFacts, { woodBelowMm }: SpecSettings): number | null {
  return path === null ? null : path.throughMm - woodBelowMm;
}

/** The hole to drill for a shank: as deep as it is, or as the shank goes in. */
export function drillFor(embedmentMm: number, drillDepthMm: number | null): number {
  return Math.max(embedmentMm, drillDepthMm ?? 0);
}
