import type { StrengthFigures } from '@/lib/materials/strength-figures';
import type { Instant } from '@/lib/units/instant';
import type { Db, Tx } from '@/prisma/client';
import { writeTx } from '@/prisma/client';
import { type SeedMaterial, STARTING_MATERIALS } from './starting-materials';

/**
 * Puts the starting materials into Stock. What is already there by id or by name is left as it is, so a second call
 * changes nothing and a maker's own figures are never overwritten. Returns how many were added.
 */
export function loadStartingMaterials(database: Db, nowAt: Instant): Promise<number> {
  return writeTx(database, (tx) => insertMaterials(tx, STARTING_MATERIALS, nowAt));
}

/** Adds those materials that are not there yet, inside a transaction. Returns how many. */
export async function insertMaterials(tx: Tx, materials: readonly SeedMaterial[], nowAt: Instant): Promise<number> {
  const rows = await tx.material.findMany({ select: { id: true, name: true } });
  const taken = new Set(rows.flatMap((row) => [row.id, row.name]));
  const missing = materials.filter((material) => !taken.has(material.id) && !taken.has(material.name));
  const now = new Date(nowAt);
  await tx.material.createMany({
    data: missing.map(({ id, kind, name, sheet, strength, note, sheetRevision = '', sheetOn = null }) => ({
      id,
      kind,
      name,
      // Only plain JSON values are in a sheet; the contract that reads it back proves it.
      ...(sheet === null ? {} : { figures: JSON.parse(JSON.stringify(sheet)) }),
      ...(strength === null ? {} : strengthColumn(strength)),
      sheetRevision,
      sheetOn,
      note,
      createdAt: now,
      updatedAt: now,
    })),
  });
  return missing.length;
}

/** An adhesive keeps its clocks' figures in the one column and those of its strength in the other. */
function strengthColumn({ kind, sheet }: StrengthFigures) {
  const stored = JSON.parse(JSON.stringify(sheet));
  return kind === 'adhesive' ? { bondFigures: stored } : { figures: stored };
}
