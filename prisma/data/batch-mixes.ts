import { storedBodySchema } from '@/lib/contracts/batch-event';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';

/** A mix of a batch as a series may name it. */
export interface BatchMixChoice {
  readonly id: string;
  readonly number: number;
  readonly batchId: string;
  readonly batchNumber: number;
  readonly mixedAt: Instant;
}

const COLUMNS = {
  id: true,
  number: true,
  batchId: true,
  mixedAt: true,
  batch: { select: { number: true } },
} as const;

/** The newest mixes of these adhesives, newest first. */
export async function listBatchMixChoices(
  reader: DbReader,
  materialIds: readonly string[],
  most: number,
): Promise<BatchMixChoice[]> {
  const rows = await reader.mix.findMany({
    where: { materialId: { in: [...materialIds] } },
    orderBy: [{ mixedAt: 'desc' }, { number: 'desc' }],
    take: most,
    select: COLUMNS,
  });
  return rows.map(({ batch, mixedAt, ...row }) => ({ ...row, batchNumber: batch.number, mixedAt: mixedAt.getTime() }));
}

/** Mixes of batches with the pieces they went into, by id of the mix. */
export async function findMixPieces(
  reader: DbReader,
  mixIds: readonly string[],
): Promise<Map<string, BatchMixChoice & { readonly pieces: readonly number[] }>> {
  const found = new Map<string, BatchMixChoice & { readonly pieces: readonly number[] }>();
  for (const ids of chunked(mixIds)) {
    const rows = await reader.mix.findMany({
      where: { id: { in: ids } },
      select: { ...COLUMNS, joints: { select: { piece: { select: { number: true } } } } },
    });
    for (const { joints, batch, mixedAt, ...row } of rows) {
      const pieces = [...new Set(joints.map(({ piece }) => piece.number))].sort((a, b) => a - b);
      found.set(row.id, { ...row, batchNumber: batch.number, mixedAt: mixedAt.getTime(), pieces });
    }
  }
  return found;
}

/** The data sheet a mix of a batch carries in the event that started it; null where there is no such mix. */
export async function findMixSheet(
  reader: DbReader,
  mixId: string,
): Promise<{ readonly sheet: AdhesiveSheet; readonly materialId: string; readonly mixedAt: Instant } | null> {
  const mix = await reader.mix.findUnique({ where: { id: mixId }, select: { batchId: true, mixedAt: true } });
  if (mix === null) return null;
  const events = await reader.batchEvent.findMany({
    where: { batchId: mix.batchId, kind: { in: ['mix-started', 'corrected'] } },
    orderBy: { seq: 'desc' },
    select: { body: true },
  });
  for (const { body } of events) {
    const read = storedBodySchema.parse(body);
    const started = read.kind === 'corrected' ? read.replacement?.body : read;
    if (started?.kind === 'mix-started' && started.mixId === mixId) {
      return { sheet: started.sheet, materialId: started.materialId, mixedAt: mix.mixedAt.getTime() };
    }
  }
  return null;
}
