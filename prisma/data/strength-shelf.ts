import { z } from 'zod';
import { readStrengthFigures } from '@/lib/contracts/strength-figures';
import { STRENGTH_KINDS, type StrengthFigures, type StrengthKind } from '@/lib/materials/strength-figures';
import type { DbReader } from '@/prisma/client';

/** A material of which strength is asked, with its figures; null: none were entered. */
export interface ShelfMaterial {
  readonly id: string;
  readonly name: string;
  readonly kind: StrengthKind;
  readonly isArchived: boolean;
  readonly figures: StrengthFigures | null;
}

/** Every wood, wire, adhesive, hook, ring and screw eye of the shop, by id. */
export type StrengthShelf = ReadonlyMap<string, ShelfMaterial>;

const kindSchema = z.enum(STRENGTH_KINDS);

/** The figures of strength of all materials, archived ones too: old revisions name them. */
export async function readStrengthShelf(reader: DbReader): Promise<StrengthShelf> {
  const rows = await reader.material.findMany({
    where: { kind: { in: [...STRENGTH_KINDS] } },
    select: { id: true, name: true, kind: true, isArchived: true, figures: true, bondFigures: true },
  });
  return new Map(
    rows.map(({ figures, bondFigures, ...row }) => {
      const kind = kindSchema.parse(row.kind);
      return [row.id, { ...row, kind, figures: strengthFigures(kind, { figures, bondFigures }) }];
    }),
  );
}

/** Stored figures of strength. An adhesive keeps its clocks' figures beside them, in a column of their own. */
export function strengthFigures(
  kind: StrengthKind,
  { figures, bondFigures }: { readonly figures: unknown; readonly bondFigures: unknown },
): StrengthFigures | null {
  const stored = kind === 'adhesive' ? bondFigures : figures;
  return stored === null ? null : readStrengthFigures(kind, stored);
}
