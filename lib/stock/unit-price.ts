import { massRatio, type PartsSheet } from '@/lib/mixing/mass-ratio';
import type { LotPartName } from './batch-need';

/** A lot with what was paid for it. */
export interface PricedLot {
  readonly part: LotPartName;
  readonly priceMinor: number;
  /** All that was received of it, above 0. */
  readonly received: number;
  readonly receivedOn: string;
}

/** What one unit (g, mm or piece) of a material costs, in minor units and not rounded. */
export type UnitPrice =
  | { readonly ok: true; readonly minor: number; readonly from: 'pack' | 'newest-lots' }
  | { readonly ok: false; readonly code: 'no-price' };

/**
 * The standard price of a material: by its pack where that is written down, else by the newest lot that has a price; of
 * a two-part glue by the newest of each part in the ratio of the sheet.
 */
export function unitPrice(
  pack: { readonly quantity: number | null; readonly priceMinor: number | null },
  sheet: PartsSheet | null,
  lots: readonly PricedLot[],
): UnitPrice {
  if (pack.quantity !== null && pack.quantity > 0 && pack.priceMinor !== null) {
    return { ok: true, minor: pack.priceMinor / pack.quantity, from: 'pack' };
  }
  const newest = (part: LotPartName) =>
    lots
      .filter((lot) => lot.part === part && lot.received > 0)
      .toSorted((a, b) => (a.receivedOn < b.receivedOn ? 1 : -1))
      .map((lot) => lot.priceMinor / lot.received)[0];
  const whole = newest('whole');
  if (whole !== undefined) return { ok: true, minor: whole, from: 'newest-lots' };
  const [resin, hardener] = [newest('resin'), newest('hardener')];
  const ratio = sheet === null ? null : massRatio(sheet);
  if (resin === undefined || hardener === undefined || ratio === null || !ratio.ok)
    return { ok: false, code: 'no-price' };
  return { ok: true, minor: (resin * ratio.aPerB + hardener) / (ratio.aPerB + 1), from: 'newest-lots' };
}
