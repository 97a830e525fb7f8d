import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';

/** A material that can be mixed, with its data sheet as it stands now. */
export interface SheetMaterial {
  readonly id: string;
  readonly name: string;
  readonly isArchived: boolean;
  /** Null: no data sheet is entered yet, or it is not one this version knows. */
  readonly sheet: AdhesiveSheet | null;
}

export interface MixableMaterial extends SheetMaterial {
  readonly sheet: AdhesiveSheet;
  readonly lots: readonly { readonly id: string; readonly code: string; readonly part: string }[];
}

const SHEET_COLUMNS = { id: true, name: true, isArchived: true, figures: true } as const;

function toSheet(figures: unknown): AdhesiveSheet | null {
  const parsed = adhesiveSheetSchema.safeParse(figures);
  return parsed.success ? parsed.data : null;
}

/** One material, or null when there is none of that id. */
export async function findSheetMaterial(reader: DbReader, materialId: string): Promise<SheetMaterial | null> {
  const row = await reader.material.findUnique({ where: { id: materialId }, select: SHEET_COLUMNS });
  return row === null ? null : { id: row.id, name: row.name, isArchived: row.isArchived, sheet: toSheet(row.figures) };
}

/** Newest lots of a material offered for a mix. Chosen: older ones are used up. */
const OFFERED_LOTS = 20;

/** Adhesives and coatings with a data sheet, by name, with their newest lots. */
export async function listMixableMaterials(reader: DbReader): Promise<MixableMaterial[]> {
  const rows = await reader.material.findMany({
    where: { kind: { in: ['adhesive', 'coating'] }, isArchived: false },
    select: {
      ...SHEET_COLUMNS,
      lots: {
        select: { id: true, code: true, part: true },
        orderBy: [{ receivedOn: 'desc' }, { code: 'asc' }],
        take: OFFERED_LOTS,
      },
    },
    orderBy: { name: 'asc' },
  });
  return rows.flatMap(({ figures, ...row }) => {
    const sheet = toSheet(figures);
    return sheet === null ? [] : [{ ...row, sheet }];
  });
}

/** Those of the ids that are no lots of the material. */
export async function lotsNotOf(reader: DbReader, materialId: string, lotIds: readonly string[]): Promise<string[]> {
  const found = await reader.lot.findMany({ where: { id: { in: [...lotIds] }, materialId }, select: { id: true } });
  const known = new Set(found.map((lot) => lot.id));
  return lotIds.filter((id) => !known.has(id));
}

/** Codes of lots by id, for those that are still there. */
export async function listLotCodes(reader: DbReader, lotIds: readonly string[]): Promise<Map<string, string>> {
  const codes = new Map<string, string>();
  for (const ids of chunked([...new Set(lotIds)])) {
    const rows = await reader.lot.findMany({
      where: { id: { in: ids } },
      select: { id: true, code: true, part: true },
    });
    for (const { id, code, part } of rows) codes.set(id, part === 'whole' ? code : `${code} ${part}`);
  }
  return codes;
}
