import { massRatio, type PartsSheet } from '@/lib/mixing/mass-ratio';
import { toMilli } from './ledger';

/** A lot that went into a cup. */
export interface PouredLot {
  readonly lotId: string;
  readonly part: 'whole' | 'resin' | 'hardener';
  /** What the book holds of it, in mg. */
  readonly leftMilli: number;
}

/** What a cup took of each lot, mg; lots it took nothing of are left out. */
export type MixUsage =
  | { readonly ok: true; readonly takenMilli: ReadonlyMap<string, number> }
  /** The sheet gives no ratio, or one by volume without the densities: how much was resin cannot be told. */
  | { readonly ok: false; readonly code: 'no-ratio' | 'volume-ratio-without-densities' };

/**
 * What a cup of `massG` took of the lots named for it. Resin and hardener share the mass by the sheet's ratio; of
 * several lots of one part the first named is emptied before the next, and the last takes what is over. A part of which
 * no lot was named is nobody's. Chosen: a maker who opens a second can does so because the first ran out.
 */
export function mixUsage(massG: number, sheet: PartsSheet, lots: readonly PouredLot[]): MixUsage {
  const takenMilli = new Map<string, number>();
  const of = (part: PouredLot['part']) => lots.filter((lot) => lot.part === part);
  const totalMilli = toMilli(massG);
  const wholeLots = of('whole');
  if (wholeLots.length > 0) {
    pour(takenMilli, wholeLots, totalMilli);
    return { ok: true, takenMilli };
  }
  if (lots.length === 0) return { ok: true, takenMilli };
  const ratio = massRatio(sheet);
  if (!ratio.ok) return { ok: false, code: ratio.code };
  const resinMilli = Math.round((totalMilli * ratio.aPerB) / (ratio.aPerB + 1));
  pour(takenMilli, of('resin'), resinMilli);
  pour(takenMilli, of('hardener'), totalMilli - resinMilli);
  return { ok: true, takenMilli };
}

function pour(takenMilli: Map<string, number>, lots: readonly PouredLot[], totalMilli: number): void {
  let rest = totalMilli;
  for (const [index, lot] of lots.entries()) {
    const isLast = index === lots.length - 1;
    const milli = isLast ? rest : Math.min(rest, lot.leftMilli);
    rest -= milli;
    if (milli > 0) takenMilli.set(lot.lotId, milli);
  }
}
