import { z } from 'zod';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import { LOT_PARTS, type LotPart, MATERIAL_KINDS, type MaterialKind } from '@/lib/contracts/material-forms';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { STOCK_UNITS, type StockUnit, toMilli } from '@/lib/stock/ledger';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';
import { leftMilliOf } from './stock';

const unitSchema = z.enum(STOCK_UNITS);
const partSchema = z.enum(LOT_PARTS);
const kindSchema = z.enum(MATERIAL_KINDS);

/** What one piece of a revision needs of a material, all lines of its bill together. */
export interface BillNeedRow {
  readonly revisionId: string;
  readonly materialId: string;
  readonly unit: StockUnit;
  readonly perPieceMilli: number;
}

/** The bills of revisions, in the order of their lines. */
export async function listBillNeeds(reader: DbReader, revisionIds: readonly string[]): Promise<BillNeedRow[]> {
  const needs = new Map<string, BillNeedRow>();
  for (const ids of chunked([...new Set(revisionIds)])) {
    const rows = await reader.billLine.findMany({
      where: { revisionId: { in: ids } },
      select: { revisionId: true, materialId: true, quantity: true, quantityUnit: true },
      orderBy: [{ revisionId: 'asc' }, { position: 'asc' }],
    });
    for (const { revisionId, materialId, quantity, quantityUnit } of rows) {
      const unit = unitSchema.parse(quantityUnit);
      const key = `${revisionId} ${materialId} ${unit}`;
      const perPieceMilli = toMilli(quantity) + (needs.get(key)?.perPieceMilli ?? 0);
      needs.set(key, { revisionId, materialId, unit, perPieceMilli });
    }
  }
  return [...needs.values()];
}

/** What batches took, in thousandths, by `batch material unit`. */
export async function takenByBatches(reader: DbReader, batchIds: readonly string[]): Promise<Map<string, number>> {
  const taken = new Map<string, number>();
  for (const ids of chunked(batchIds)) {
    const rows = await reader.stockMovement.groupBy({
      by: ['batchId', 'lotId'],
      where: { batchId: { in: ids } },
      _sum: { quantityMilli: true },
    });
    const lots = new Map<string, { materialId: string; quantityUnit: string }>();
    for (const lotIds of chunked([...new Set(rows.map((row) => row.lotId))])) {
      const found = await reader.lot.findMany({
        where: { id: { in: lotIds } },
        select: { id: true, materialId: true, quantityUnit: true },
      });
      for (const { id, ...lot } of found) lots.set(id, lot);
    }
    for (const { batchId, lotId, _sum } of rows) {
      const lot = lots.get(lotId);
      if (lot === undefined || batchId === null) continue;
      const key = needKey(batchId, lot.materialId, unitSchema.parse(lot.quantityUnit));
      taken.set(key, (taken.get(key) ?? 0) - Number(_sum.quantityMilli ?? 0));
    }
  }
  return taken;
}

/** What all open batches took, in thousandths, by `batch material unit`; added up by the database, as there may be much. */
export async function takenByOpenBatches(reader: DbReader): Promise<Map<string, number>> {
  const rows = await reader.$queryRaw<{ batchId: string; materialId: string; quantityUnit: string; moved: bigint }[]>`
    SELECT m."batchId", l."materialId", l."quantityUnit", CAST(SUM(m."quantityMilli") AS BIGINT) AS "moved"
    FROM "Batch" b
    JOIN "StockMovement" m ON m."batchId" = b."id"
    JOIN "Lot" l ON l."id" = m."lotId"
    WHERE b."status" = 'open'
    GROUP BY m."batchId", l."materialId", l."quantityUnit"`;
  return new Map(
    rows.map(({ batchId, materialId, quantityUnit, moved }) => [
      needKey(batchId, materialId, unitSchema.parse(quantityUnit)),
      -Number(moved),
    ]),
  );
}

/** Names what a batch needs or took of a material. */
export function needKey(batchId: string, materialId: string, unit: StockUnit): string {
  return `${batchId} ${materialId} ${unit}`;
}

/** A material that open batches may need, with what is left of it. */
export interface StockedMaterial {
  readonly id: string;
  readonly name: string;
  readonly kind: MaterialKind;
  /** Null: it has none, or it is not one this version knows. */
  readonly sheet: AdhesiveSheet | null;
  readonly leadTimeDays: number | null;
  readonly packQuantity: number | null;
  readonly reorderPoint: number | null;
  readonly stockUnit: StockUnit | null;
  readonly lots: readonly StockedLot[];
  /** Parts it was ever bought in. */
  readonly boughtParts: ReadonlySet<LotPart>;
}

export interface StockedLot {
  readonly part: LotPart;
  readonly unit: StockUnit;
  readonly leftMilli: number;
  readonly expiresOn: string | null;
}

/** Materials by id: those asked for, and those with a reorder point. */
export async function listStockedMaterials(reader: DbReader, needed: readonly string[]): Promise<StockedMaterial[]> {
  const watched = await reader.material.findMany({
    where: { isArchived: false, NOT: { reorderPoint: null } },
    select: { id: true },
  });
  const ids = [...new Set([...needed, ...watched.map((row) => row.id)])];
  const materials: StockedMaterial[] = [];
  for (const part of chunked(ids)) {
    const rows = await reader.material.findMany({
      where: { id: { in: part } },
      select: {
        id: true,
        name: true,
        kind: true,
        figures: true,
        leadTimeDays: true,
        packQuantity: true,
        reorderPoint: true,
        stockUnit: true,
      },
    });
    const lots = await reader.lot.findMany({
      where: { materialId: { in: part } },
      select: { materialId: true, part: true, quantityUnit: true, quantity: true, movedMilli: true, expiresOn: true },
    });
    const byMaterial = new Map<string, typeof lots>(part.map((id) => [id, []]));
    for (const lot of lots) byMaterial.get(lot.materialId)?.push(lot);
    for (const { figures, stockUnit, kind, ...row } of rows) {
      const own = byMaterial.get(row.id) ?? [];
      const sheet = adhesiveSheetSchema.safeParse(figures);
      materials.push({
        ...row,
        kind: kindSchema.parse(kind),
        stockUnit: stockUnit === null ? null : unitSchema.parse(stockUnit),
        sheet: sheet.success ? sheet.data : null,
        boughtParts: new Set(own.map((lot) => partSchema.parse(lot.part))),
        lots: own.map((lot) => ({
          part: partSchema.parse(lot.part),
          unit: unitSchema.parse(lot.quantityUnit),
          leftMilli: leftMilliOf(lot),
          expiresOn: lot.expiresOn,
        })),
      });
    }
  }
  return materials.sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
}
