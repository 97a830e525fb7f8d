import { massRatio, type PartsSheet } from '@/lib/mixing/mass-ratio';

export type LotPartName = 'whole' | 'resin' | 'hardener';

/** What is needed of a material, by part; thousandths. */
export type PartNeeds =
  | { readonly ok: true; readonly parts: readonly { readonly part: LotPartName; readonly milli: number }[] }
  /** The glue comes in two parts and its sheet does not say in which ratio. */
  | { readonly ok: false; readonly code: 'no-ratio' | 'volume-ratio-without-densities' };

/**
 * Splits what is needed of a material into the parts it is bought in. A material without a sheet, or of which only
 * containers with both parts were bought, is needed whole.
 */
export function partNeeds(milli: number, sheet: PartsSheet | null, boughtParts: ReadonlySet<LotPartName>): PartNeeds {
  const isTwoPart = boughtParts.has('resin') || boughtParts.has('hardener');
  const isWhole = sheet === null || !(isTwoPart || (sheet.ratio !== undefined && !boughtParts.has('whole')));
  if (isWhole) return { ok: true, parts: [{ part: 'whole', milli }] };
  const ratio = massRatio(sheet);
  if (!ratio.ok) return { ok: false, code: ratio.code };
  const resin = Math.round((milli * ratio.aPerB) / (ratio.aPerB + 1));
  return {
    ok: true,
    parts: [
      { part: 'resin', milli: resin },
      { part: 'hardener', milli: milli - resin },
    ],
  };
}

/** The share of one part in what is needed of a material; 0 where it is not bought in that part or cannot be split. */
export function partMilli(
  milli: number,
  sheet: PartsSheet | null,
  boughtParts: ReadonlySet<LotPartName>,
  part: LotPartName,
): number {
  const split = partNeeds(milli, sheet, boughtParts);
  return split.ok ? (split.parts.find((one) => one.part === part)?.milli ?? 0) : 0;
}

/** What a batch still needs: the bill's for its live pieces less what it took; never below 0. */
export function stillNeeded(perPieceMilli: number, livePieces: number, takenMilli: number): number {
  return Math.max(0, perPieceMilli * livePieces - takenMilli);
}
