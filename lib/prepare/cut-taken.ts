import type { CutBar } from '@/lib/bom/cut-list';
import type { Preparation } from '@/lib/prepare/preparation';

/** The line of the card that says a length is cut; `number` from 1, within its wire. */
export function cutItem(materialId: string, number: number): string {
  return `cut:${materialId}:${number}`;
}

/** The length of a preparation that this line of its card cuts; null for any other line. */
export function barOfItem({ cuts }: Pick<Preparation, 'cuts'>, item: string): CutBar | null {
  for (const { materialId, bars } of cuts) {
    const found = bars.find((_, index) => cutItem(materialId, index + 1) === item);
    if (found !== undefined) return found;
  }
  return null;
}

/**
 * Whether what is left of a length stays in the book of its lot. A coil goes on as one shorter length, and so does the
 * rest of a bundle. What is left of one whole rod would look like part of a rod that is not there, so it leaves the lot.
 */
export function staysInLot({ lengthMm, isKept }: CutBar, rodMm: number | null): boolean {
  return isKept && (rodMm === null || lengthMm < rodMm - 1e-9);
}

/** What cutting a length takes from its lot, mm: pieces, kerf, trim, and what is left over unless it stays there. */
export function takenByCut(bar: CutBar, rodMm: number | null): number {
  return staysInLot(bar, rodMm) ? bar.lengthMm - bar.offcutMm : bar.lengthMm;
}
