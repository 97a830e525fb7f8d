import { z } from 'zod';
import type { DbReader } from '@/prisma/client';

/** What finished batches of a model tell of its scrap. */
export interface ModelScrap {
  readonly pieces: number;
  readonly scrapped: number;
  /** Null: no batch of it is finished. */
  readonly scrapShare: number | null;
  /** Pieces of the newest batch; null: there was none. */
  readonly lastQuantity: number | null;
}

const scrappedSchema = z.object({ pieces: z.array(z.int()) });

/** Finished batches that are looked at, the newest. Chosen: older ones tell of older hands. */
const NEWEST_BATCHES = 20;

/** How many pieces of the newest finished batches of a model were scrapped, as they were reported. */
export async function scrapOfModel(reader: DbReader, modelId: string): Promise<ModelScrap> {
  const [last] = await reader.batch.findMany({
    where: { revision: { modelId } },
    select: { quantity: true },
    orderBy: { number: 'desc' },
    take: 1,
  });
  const batches = await reader.batch.findMany({
    where: { status: 'finished', revision: { modelId } },
    select: { id: true, quantity: true },
    orderBy: { number: 'desc' },
    take: NEWEST_BATCHES,
  });
  const events = await reader.batchEvent.findMany({
    where: { batchId: { in: batches.map((batch) => batch.id) }, kind: 'pieces-scrapped' },
    select: { batchId: true, body: true },
  });
  const scrapped = new Set(
    events.flatMap(({ batchId, body }) => {
      const parsed = scrappedSchema.safeParse(body);
      return parsed.success ? parsed.data.pieces.map((piece) => `${batchId} ${piece}`) : [];
    }),
  ).size;
  const pieces = batches.reduce((sum, batch) => sum + batch.quantity, 0);
  return {
    pieces,
    scrapped,
    scrapShare: pieces === 0 ? null : scrapped / pieces,
    lastQuantity: last?.quantity ?? null,
  };
}
