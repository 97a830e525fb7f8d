import { z } from 'zod';
import { PULL_MODES, type PullMode } from '@/lib/pulltest/pull-mode';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';

const modeSchema = z.enum(PULL_MODES);

/** A mix that a lot went into. */
export interface LotMix {
  readonly mixId: string;
  readonly number: number;
  readonly batchId: string;
}

/** The mixes a lot went into, in the order they were mixed. */
export async function listMixesOfLot(reader: DbReader, lotId: string): Promise<LotMix[]> {
  const rows = await reader.mixLot.findMany({
    where: { lotId },
    select: { mix: { select: { id: true, number: true, batchId: true } } },
    orderBy: [{ mix: { mixedAt: 'asc' } }, { mixId: 'asc' }],
  });
  return rows.map(({ mix }) => ({ mixId: mix.id, number: mix.number, batchId: mix.batchId }));
}

/** Batches that a lot was taken for other than through a cup, with what they took in thousandths, nothing left out. */
export async function listBatchesOfLot(reader: DbReader, lotId: string): Promise<Map<string, number>> {
  const rows = await reader.stockMovement.groupBy({
    by: ['batchId'],
    where: { lotId, mixId: null, NOT: { batchId: null } },
    _sum: { quantityMilli: true },
  });
  return new Map(
    rows.flatMap(({ batchId, _sum }): [string, number][] => {
      const taken = -Number(_sum.quantityMilli ?? 0);
      return batchId === null || taken === 0 ? [] : [[batchId, taken]];
    }),
  );
}

/** What batches took of each lot, in thousandths: by batch, cups and all else together. */
export interface BatchLot {
  readonly lotId: string;
  readonly takenMilli: number;
  /** Of that, through cups. */
  readonly inMixesMilli: number;
}

/** The lots a batch took from, with what it took; lots that got all of it back are left out. */
export async function listLotsOfBatch(reader: DbReader, batchId: string): Promise<BatchLot[]> {
  const rows = await reader.stockMovement.findMany({
    where: { batchId },
    select: { lotId: true, quantityMilli: true, mixId: true },
    orderBy: [{ lotId: 'asc' }, { order: 'asc' }],
  });
  const byLot = new Map<string, { takenMilli: number; inMixesMilli: number }>();
  for (const { lotId, quantityMilli, mixId } of rows) {
    const sum = byLot.get(lotId) ?? { takenMilli: 0, inMixesMilli: 0 };
    sum.takenMilli -= Number(quantityMilli);
    if (mixId !== null) sum.inMixesMilli -= Number(quantityMilli);
    byLot.set(lotId, sum);
  }
  return [...byLot].flatMap(([lotId, sum]) => (sum.takenMilli === 0 ? [] : [{ lotId, ...sum }]));
}

/** Buyers' order numbers of the pieces of batches: by batch, then by piece; empty where there is none. */
export async function listOrderNumbers(
  reader: DbReader,
  batchIds: readonly string[],
): Promise<Map<string, Map<number, string>>> {
  const found = new Map<string, Map<number, string>>();
  for (const ids of chunked(batchIds)) {
    const rows = await reader.batch.findMany({
      where: { id: { in: ids } },
      select: { id: true, orderNumber: true, pieces: { select: { number: true, orderNumber: true } } },
    });
    for (const { id, orderNumber, pieces } of rows) {
      found.set(id, new Map(pieces.map((piece) => [piece.number, piece.orderNumber ?? orderNumber])));
    }
  }
  return found;
}

/** A pull on a coupon, or on an anchor of a piece. */
export interface TracedPull {
  readonly id: string;
  readonly seriesId: string;
  readonly seriesName: string;
  readonly specimen: string;
  /** Null: none was read. */
  readonly loadN: number | null;
  /** How it gave way. */
  readonly mode: PullMode;
  /** The mix of a batch it was set with, where it was one. */
  readonly mixId: string | null;
  readonly piece: { readonly batchId: string; readonly number: number } | null;
}

const PULL_COLUMNS = {
  id: true,
  seriesId: true,
  series: { select: { name: true } },
  loadN: true,
  mode: true,
  specimen: {
    select: {
      code: true,
      piece: { select: { batchId: true, number: true } },
      mix: { select: { batchMixId: true, adhesiveLotCode: true } },
    },
  },
} as const;

/** What pulls are asked for. */
export interface PullsAsked {
  readonly mixIds: readonly string[];
  readonly batchIds: readonly string[];
  /** A lot by its material and code, for test boards that were glued with it outside of any batch. */
  readonly lot: { readonly materialId: string; readonly code: string } | null;
}

/** Pulls of these mixes, of pieces of these batches, and of cups of test boards that name the lot. */
export async function listTracedPulls(reader: DbReader, { mixIds, batchIds, lot }: PullsAsked): Promise<TracedPull[]> {
  const pulls = new Map<string, TracedPull>();
  const wheres = [
    ...chunked(mixIds).map((ids) => ({ specimen: { mix: { batchMixId: { in: ids } } } })),
    ...chunked(batchIds).map((ids) => ({ specimen: { piece: { batchId: { in: ids } } } })),
    ...(lot === null
      ? []
      : [{ specimen: { mix: { adhesiveMaterialId: lot.materialId, adhesiveLotCode: { contains: lot.code } } } }]),
  ];
  for (const where of wheres) {
    const rows = await reader.pull.findMany({
      where,
      select: PULL_COLUMNS,
      orderBy: [{ seriesId: 'asc' }, { number: 'asc' }],
    });
    for (const { series, specimen, mode, ...row } of rows) {
      const { code, piece, mix } = specimen;
      pulls.set(row.id, {
        ...row,
        mode: modeSchema.parse(mode),
        seriesName: series.name,
        specimen: code,
        piece,
        mixId: mix.batchMixId,
      });
    }
  }
  return [...pulls.values()];
}
