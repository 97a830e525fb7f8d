import type { StockRow } from '@/lib/exchange/stock-row';
import type { Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { type Db, type DbReader, writeTx } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';
import { hasSheet } from '@/prisma/data/materials';
import { getShop } from '@/prisma/data/shop';

/** What a list would bring. */
export interface StockListPlan {
  /** Lots that are not in Stock yet. */
  readonly rows: readonly StockRow[];
  /** Materials that are not in Stock yet, with what they seem to be. */
  readonly newMaterials: readonly string[];
  /** Lines whose lot is in Stock already, or stands in the list before. */
  readonly knownLines: readonly number[];
  /** Lines that name resin or hardener of a material that has no parts. */
  readonly wrongParts: readonly number[];
}

interface KnownMaterial {
  readonly id: string;
  readonly kind: string;
}

/** Looks a list up against Stock. Nothing is written. */
export async function planStockList(reader: DbReader, rows: readonly StockRow[]): Promise<StockListPlan> {
  const materials = await knownMaterials(reader);
  const lots = await reader.lot.findMany({ select: { materialId: true, code: true, part: true } });
  const taken = new Set(lots.map((lot) => `${lot.materialId} ${lot.part} ${lot.code}`));
  const plan = {
    rows: [] as StockRow[],
    newMaterials: new Set<string>(),
    knownLines: [] as number[],
    wrongParts: [] as number[],
  };
  const newKinds = new Map<string, string>();
  for (const row of rows) {
    const material = materials.get(folded(row.materialName));
    const key = `${material?.id ?? folded(row.materialName)} ${row.part} ${row.code}`;
    // A new material is what its first line says.
    const kind = material?.kind ?? newKinds.get(folded(row.materialName)) ?? kindOf(row);
    if (taken.has(key)) plan.knownLines.push(row.line);
    else if (row.part !== 'whole' && kind !== 'adhesive' && kind !== 'coating') plan.wrongParts.push(row.line);
    else {
      taken.add(key);
      plan.rows.push(row);
      if (material !== undefined) continue;
      plan.newMaterials.add(row.materialName);
      newKinds.set(folded(row.materialName), kind);
    }
  }
  return { ...plan, newMaterials: distinct([...plan.newMaterials]) };
}

/**
 * Takes a list into Stock, all of it in one transaction: materials that are missing, and lots that are. What is there
 * already stays as it is, so the same list taken in twice changes nothing.
 */
export function importStockList(
  database: Db,
  rows: readonly StockRow[],
  nowAt: Instant,
): Promise<{ readonly lots: number; readonly materials: number }> {
  return writeTx(
    database,
    async (tx) => {
      const plan = await planStockList(tx, rows);
      const materials = await knownMaterials(tx);
      const now = new Date(nowAt);
      const today = wallTimeAt(nowAt, (await getShop(tx)).timeZone).day;
      for (const name of plan.newMaterials) {
        const kind = plan.rows
          .map((row) => (folded(row.materialName) === folded(name) ? kindOf(row) : null))
          .find(Boolean);
        const data = { name, kind: kind ?? 'other', note: '', sheetRevision: '', createdAt: now, updatedAt: now };
        const { id } = await tx.material.create({ data });
        materials.set(folded(name), { id, kind: data.kind });
      }
      const data = plan.rows.flatMap((row) => {
        const materialId = materials.get(folded(row.materialName))?.id;
        if (materialId === undefined) return [];
        const { code, part, quantity, unit, priceMinor, openedOn, expiresOn, note } = row;
        // A list without the day was true on the day it was taken in.
        const receivedOn = row.receivedOn ?? (openedOn !== null && openedOn < today ? openedOn : today);
        const place = { materialId, code, part, quantity, quantityUnit: unit, priceMinor };
        return [{ ...place, receivedOn, openedOn, expiresOn, supplierNote: note, createdAt: now }];
      });
      for (const part of chunked(data, 200)) await tx.lot.createMany({ data: part });
      return { lots: data.length, materials: plan.newMaterials.length };
    },
    { timeoutMs: 60_000 },
  );
}

async function knownMaterials(reader: DbReader): Promise<Map<string, KnownMaterial>> {
  const rows = await reader.material.findMany({ select: { id: true, name: true, kind: true } });
  return new Map(rows.map(({ id, name, kind }) => [folded(name), { id, kind }]));
}

/** A material of a list is what the list says; one with parts is a glue. */
function kindOf(row: StockRow): string {
  if (row.kind !== null && (row.part === 'whole' || hasSheet(row.kind))) return row.kind;
  return row.part === 'whole' ? 'other' : 'adhesive';
}

function folded(name: string): string {
  return name.toLocaleLowerCase('en');
}

/** Names that differ in more than their capitals; the first spelling stays. */
function distinct(names: readonly string[]): string[] {
  return [...new Map(names.toReversed().map((name) => [folded(name), name])).values()].toReversed();
}
