import 'server-only';
import type { LotPart } from '@/lib/contracts/material-forms';
import { partNeeds, stillNeeded } from '@/lib/stock/batch-need';
import type { StockUnit } from '@/lib/stock/ledger';
import { type Need, type Outlook, outlook } from '@/lib/stock/shortages';
import type { Db } from '@/prisma/client';
import {
  listBillNeeds,
  listStockedMaterials,
  needKey,
  type StockedMaterial,
  takenByOpenBatches,
} from '@/prisma/data/batch-needs';
import { type BatchHead, listOpenBatchHeads } from '@/prisma/data/batches';
import { type FoldedBatch, foldedBatches } from './known-batches';

/** One thing that batches take or that is watched: a material, or one part of it. */
export interface OutlookLine {
  readonly material: StockedMaterial;
  readonly part: LotPart;
  readonly unit: StockUnit;
  /** Null: what is needed of it cannot be told; the mixing ratio is missing. */
  readonly outlook: Outlook | null;
  /** Open batches that still need some, the first to take first. */
  readonly needs: readonly Need[];
}

/** How many pieces of a batch are not scrapped. */
export function livePieces({ state }: Pick<FoldedBatch, 'state'>): number {
  return state.pieces.filter((piece) => piece.scrapped === null).length;
}

/**
 * What open batches still need of everything and whether it is there. Reservations are not stored: a batch reserves
 * its bill less what it took, as it stands now, so a scrapped piece, a correction or a finished batch frees stock at
 * once and nothing can be left reserved by mistake.
 */
export async function stockOutlook(database: Db, today: string): Promise<OutlookLine[]> {
  const heads = await listOpenBatchHeads(database);
  const folded = await foldedBatches(database, heads);
  const bills = await listBillNeeds(
    database,
    heads.map((head) => head.revisionId),
  );
  const taken = await takenByOpenBatches(database);
  const needs = new Map<string, Need[]>();
  for (const [index, head] of heads.entries()) {
    const batch = folded[index];
    for (const { materialId, unit, perPieceMilli } of batch === undefined
      ? []
      : bills.filter((need) => need.revisionId === head.revisionId)) {
      const took = taken.get(needKey(head.id, materialId, unit)) ?? 0;
      const milli = stillNeeded(perPieceMilli, batch === undefined ? 0 : livePieces(batch), took);
      const key = `${materialId} ${unit}`;
      if (milli > 0) needs.set(key, [...(needs.get(key) ?? []), needOf(head, milli)]);
    }
  }
  const materials = await listStockedMaterials(
    database,
    [...needs.keys()].map((key) => key.split(' ')[0] ?? ''),
  );
  return materials.flatMap((material) => linesOf(material, needs, today));
}

function needOf({ id, number, dueOn }: BatchHead, milli: number): Need {
  return { batchId: id, batchNumber: number, neededOn: dueOn, milli };
}

function linesOf(material: StockedMaterial, all: ReadonlyMap<string, readonly Need[]>, today: string): OutlookLine[] {
  const units = new Set<StockUnit>(
    (['g', 'mm', 'pieces'] as const).filter((unit) => all.has(`${material.id} ${unit}`) || unit === material.stockUnit),
  );
  return [...units].flatMap((unit) => {
    const needs = all.get(`${material.id} ${unit}`) ?? [];
    const lots = material.lots.filter((lot) => lot.unit === unit);
    const split = partNeeds(0, material.sheet, material.boughtParts);
    if (!split.ok) return [{ material, unit, part: 'whole' as const, outlook: null, needs }];
    return split.parts.map(({ part }): OutlookLine => {
      const ofPart = needs.map((need) => {
        const parts = partNeeds(need.milli, material.sheet, material.boughtParts);
        return { ...need, milli: parts.ok ? (parts.parts.find((one) => one.part === part)?.milli ?? 0) : 0 };
      });
      const kept = lots.filter((lot) => lot.part === part);
      return { material, unit, part, outlook: outlook(today, kept, ofPart), needs: ofPart };
    });
  });
}
