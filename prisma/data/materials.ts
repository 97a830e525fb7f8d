import { z } from 'zod';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import { MATERIAL_KINDS, type MaterialKind } from '@/lib/contracts/material-forms';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { STRENGTH_KINDS, type StrengthFigures, type StrengthKind } from '@/lib/materials/strength-figures';
import { STOCK_UNITS, type StockUnit } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { strengthFigures } from '@/prisma/data/strength-shelf';
import { chunked } from './batches';
import { listOnHand, type OnHand } from './stock-on-hand';

const kindSchema = z.enum(MATERIAL_KINDS);

/** A material as a choice in a form. */
export interface MaterialChoice {
  readonly id: string;
  readonly name: string;
  readonly kind: MaterialKind;
}

/** All materials in use, by name: the choices of forms. */
export async function listMaterialChoices(reader: DbReader): Promise<MaterialChoice[]> {
  const rows = await reader.material.findMany({
    where: { isArchived: false },
    select: { id: true, name: true, kind: true },
  });
  return rows
    .map((row) => ({ ...row, kind: kindSchema.parse(row.kind) }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
}

/** How a material is bought. What nobody has said is null. */
export interface Buying {
  /** What it is counted in. */
  readonly stockUnit: StockUnit | null;
  /** What one pack holds, in that unit, and costs, in minor units of the shop's money. */
  readonly packQuantity: number | null;
  readonly packPriceMinor: number | null;
  /** Order when no more than this is left, in that unit. */
  readonly reorderPoint: number | null;
  readonly leadTimeDays: number | null;
}

const stockUnitSchema = z.enum(STOCK_UNITS).nullable();

function toBuying(row: Omit<Buying, 'stockUnit'> & { stockUnit: string | null }): Buying {
  const { packQuantity, packPriceMinor, reorderPoint, leadTimeDays } = row;
  return { stockUnit: stockUnitSchema.parse(row.stockUnit), packQuantity, packPriceMinor, reorderPoint, leadTimeDays };
}

const BUYING_COLUMNS = {
  stockUnit: true,
  packQuantity: true,
  packPriceMinor: true,
  reorderPoint: true,
  leadTimeDays: true,
} as const;

/** How materials are bought, by id. */
export async function listBuying(reader: DbReader, materialIds: readonly string[]): Promise<Map<string, Buying>> {
  const buying = new Map<string, Buying>();
  for (const ids of chunked(materialIds)) {
    const rows = await reader.material.findMany({
      where: { id: { in: ids } },
      select: { id: true, ...BUYING_COLUMNS },
    });
    for (const row of rows) buying.set(row.id, toBuying(row));
  }
  return buying;
}

export interface Material extends MaterialChoice {
  readonly buying: Buying;
  /** The data sheet of an adhesive or a coating; null when none was entered, and for all other kinds. */
  readonly sheet: AdhesiveSheet | null;
  /** What is known of its strength; null when nothing was entered, and for kinds that carry nothing. */
  readonly strength: StrengthFigures | null;
  readonly sheetRevision: string;
  readonly sheetOn: string | null;
  readonly note: string;
  readonly isArchived: boolean;
  readonly version: number;
  readonly updatedAt: Instant;
}

/** Whether materials of a kind have a data sheet with cure figures. */
export function hasSheet(kind: MaterialKind): boolean {
  return kind === 'adhesive' || kind === 'coating';
}

/** The same kind as one of which strength is asked; null for the others. */
export function strengthKindOf(kind: MaterialKind): StrengthKind | null {
  return STRENGTH_KINDS.find((of) => of === kind) ?? null;
}

/** A material, or null. */
export async function findMaterial(reader: DbReader, materialId: string): Promise<Material | null> {
  const row = await reader.material.findUnique({ where: { id: materialId } });
  if (row === null) return null;
  const kind = kindSchema.parse(row.kind);
  const strengthKind = strengthKindOf(kind);
  return {
    id: row.id,
    name: row.name,
    kind,
    sheet: hasSheet(kind) && row.figures !== null ? adhesiveSheetSchema.parse(row.figures) : null,
    strength: strengthKind === null ? null : strengthFigures(strengthKind, row),
    sheetRevision: row.sheetRevision,
    sheetOn: row.sheetOn,
    note: row.note,
    buying: toBuying(row),
    isArchived: row.isArchived,
    version: row.version,
    updatedAt: row.updatedAt.getTime(),
  };
}

/** A line of the list of materials. */
export interface MaterialLine extends MaterialChoice {
  readonly lotCount: number;
  readonly hasFigures: boolean;
  readonly buying: Buying;
  readonly onHand: readonly OnHand[];
}

export interface MaterialSearch {
  readonly kind: MaterialKind | null;
  /** A part of the name in whatever case; empty: all. */
  readonly text: string;
  readonly isArchived: boolean;
  /** From 0. */
  readonly page: number;
  readonly pageSize: number;
}

/** One page of materials by name, and how many there are in all. */
export async function listMaterialPage(
  reader: DbReader,
  { kind, text, isArchived, page, pageSize }: MaterialSearch,
): Promise<{ lines: MaterialLine[]; total: number }> {
  const folded = text.toLocaleLowerCase('en');
  const where = { isArchived, ...(kind === null ? {} : { kind }) };
  const names = await reader.material.findMany({ where, select: { id: true, name: true } });
  const found = names
    .filter((material) => material.name.toLocaleLowerCase('en').includes(folded))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  const ids = found.slice(page * pageSize, (page + 1) * pageSize).map((material) => material.id);
  const rows = await reader.material.findMany({
    where: { id: { in: ids } },
    select: {
      id: true,
      name: true,
      kind: true,
      version: true,
      figures: true,
      ...BUYING_COLUMNS,
      _count: { select: { lots: true } },
    },
  });
  const onHand = await listOnHand(reader, ids);
  const lines = new Map(
    rows.map(({ _count, figures, kind: word, id, name, ...row }): [string, MaterialLine] => [
      id,
      {
        id,
        name,
        kind: kindSchema.parse(word),
        lotCount: _count.lots,
        hasFigures: figures !== null,
        buying: toBuying(row),
        onHand: onHand.get(id) ?? [],
      },
    ]),
  );
  return { lines: ids.flatMap((id) => lines.get(id) ?? []), total: found.length };
}

/** Whether another material than `exceptId` has this name, in whatever case. */
export async function isMaterialNameTaken(reader: DbReader, name: string, exceptId: string | null): Promise<boolean> {
  const folded = name.toLocaleLowerCase('en');
  const materials = await reader.material.findMany({ select: { id: true, name: true } });
  return materials.some((material) => material.id !== exceptId && material.name.toLocaleLowerCase('en') === folded);
}

/** Names of materials, by id. */
export async function listMaterialNames(reader: DbReader, ids: readonly string[]): Promise<Map<string, string>> {
  const names = new Map<string, string>();
  for (const part of chunked([...new Set(ids)])) {
    const rows = await reader.material.findMany({ where: { id: { in: part } }, select: { id: true, name: true } });
    for (const { id, name } of rows) names.set(id, name);
  }
  return names;
}
