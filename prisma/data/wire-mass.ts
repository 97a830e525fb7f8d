import { wireDensity, wireMassPerMetreG } from '@/lib/bom/wire-mass';
import { wireSheetSchema } from '@/lib/contracts/strength-figures';
import type { DbReader } from '@/prisma/client';

/** Mass of each wire, g/mm, by material; wires without a diameter or an alloy of known density are left out. */
export async function wireGPerMm(reader: DbReader, materialIds: readonly string[]): Promise<Map<string, number>> {
  const rows = await reader.material.findMany({
    where: { id: { in: [...new Set(materialIds)] }, kind: 'wire' },
    select: { id: true, figures: true },
  });
  return new Map(
    rows.flatMap(({ id, figures }): [string, number][] => {
      const sheet = wireSheetSchema.safeParse(figures);
      const density = sheet.success ? wireDensity(sheet.data.alloy) : null;
      return sheet.success && density !== null ? [[id, wireMassPerMetreG(sheet.data.diameterMm, density) / 1000]] : [];
    }),
  );
}
