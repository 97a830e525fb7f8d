import { z } from 'zod';
import { fromMilli, MOVEMENT_KINDS, type MovementDraft, type MovementKind, toMilli } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';
import { chunked } from './batches';

/** Where the book of a lot stands. */
export interface LotBook {
  readonly lotId: string;
  /** What is left, in thousandths of the lot's unit. */
  readonly leftMilli: number;
  /** Number of its newest movement; 0 for none. */
  readonly lastOrder: number;
}

const BOOK_COLUMNS = { id: true, quantity: true, movedMilli: true, lastOrder: true } as const;

/** What is left of a lot by its row, in thousandths: its first receipt and all that moved since. */
export function leftMilliOf({ quantity, movedMilli }: { quantity: number; movedMilli: bigint }): number {
  return toMilli(quantity) + Number(movedMilli);
}

/** The books of lots, by id; lots that are not there are left out. */
export async function listLotBooks(reader: DbReader, lotIds: readonly string[]): Promise<Map<string, LotBook>> {
  const books = new Map<string, LotBook>();
  for (const ids of chunked([...new Set(lotIds)])) {
    for (const row of await reader.lot.findMany({ where: { id: { in: ids } }, select: BOOK_COLUMNS })) {
      books.set(row.id, { lotId: row.id, leftMilli: leftMilliOf(row), lastOrder: row.lastOrder });
    }
  }
  return books;
}

/** One line of a lot's book. */
export interface StockMovement {
  readonly id: string;
  readonly lotId: string;
  readonly order: number;
  readonly kind: MovementKind;
  /** Signed, in the lot's unit. */
  readonly quantity: number;
  readonly quantityMilli: number;
  /** What was left after it, in the lot's unit. */
  readonly left: number;
  readonly reason: string;
  readonly batch: { readonly id: string; readonly number: number } | null;
  readonly mixId: string | null;
  readonly personName: string | null;
  readonly priceMinor: number | null;
  readonly correctsOrder: number | null;
  readonly key: string;
  readonly at: Instant;
}

const MOVEMENT_COLUMNS = {
  id: true,
  lotId: true,
  order: true,
  kind: true,
  quantityMilli: true,
  leftMilli: true,
  reason: true,
  batch: { select: { id: true, number: true } },
  mixId: true,
  person: { select: { name: true } },
  priceMinor: true,
  corrects: { select: { order: true } },
  key: true,
  at: true,
} as const;

const kindSchema = z.enum(MOVEMENT_KINDS);

interface MovementRow {
  id: string;
  lotId: string;
  order: number;
  kind: string;
  quantityMilli: bigint;
  leftMilli: bigint;
  reason: string;
  batch: { id: string; number: number } | null;
  mixId: string | null;
  person: { name: string } | null;
  priceMinor: number | null;
  corrects: { order: number } | null;
  key: string;
  at: Date;
}

function toMovement({ person, corrects, quantityMilli, leftMilli, kind, at, ...row }: MovementRow): StockMovement {
  return {
    ...row,
    kind: kindSchema.parse(kind),
    quantityMilli: Number(quantityMilli),
    quantity: fromMilli(Number(quantityMilli)),
    left: fromMilli(Number(leftMilli)),
    personName: person?.name ?? null,
    correctsOrder: corrects?.order ?? null,
    at: at.getTime(),
  };
}

/** One page of a lot's movements, the newest first, and how many there are. The first receipt is in the lot's row. */
export async function listMovementPage(
  reader: DbReader,
  { lotId, page, pageSize }: { readonly lotId: string; readonly page: number; readonly pageSize: number },
): Promise<{ movements: StockMovement[]; total: number }> {
  const where = { lotId };
  const total = await reader.stockMovement.count({ where });
  const rows = await reader.stockMovement.findMany({
    where,
    select: MOVEMENT_COLUMNS,
    orderBy: { order: 'desc' },
    skip: page * pageSize,
    take: pageSize,
  });
  return { movements: rows.map(toMovement), total };
}

/** The movement of this id, or null. */
export async function findMovement(reader: DbReader, movementId: string): Promise<StockMovement | null> {
  const row = await reader.stockMovement.findUnique({ where: { id: movementId }, select: MOVEMENT_COLUMNS });
  return row === null ? null : toMovement(row);
}

/** The movement taken in under this key, or null. */
export async function findMovementByKey(reader: DbReader, key: string): Promise<StockMovement | null> {
  const row = await reader.stockMovement.findUnique({ where: { key }, select: MOVEMENT_COLUMNS });
  return row === null ? null : toMovement(row);
}

/** What a movement and its corrections come to, in thousandths. */
export async function standingMilli(reader: DbReader, movement: StockMovement): Promise<number> {
  const { _sum } = await reader.stockMovement.aggregate({
    where: { correctsId: movement.id },
    _sum: { quantityMilli: true },
  });
  return movement.quantityMilli + Number(_sum.quantityMilli ?? 0);
}

/** What cups took of each lot, in thousandths: by mix, then by lot. */
export async function takenByMixes(
  reader: DbReader,
  mixIds: readonly string[],
): Promise<Map<string, Map<string, number>>> {
  const taken = new Map<string, Map<string, number>>();
  for (const ids of chunked(mixIds)) {
    const rows = await reader.stockMovement.groupBy({
      by: ['mixId', 'lotId'],
      where: { mixId: { in: ids } },
      _sum: { quantityMilli: true },
    });
    for (const { mixId, lotId, _sum } of rows) {
      if (mixId === null) continue;
      const byLot = taken.get(mixId) ?? new Map<string, number>();
      taken.set(mixId, byLot.set(lotId, -Number(_sum.quantityMilli ?? 0)));
    }
  }
  return taken;
}

/** A line to write, with all that stands beside its quantity. */
export interface NewMovement extends MovementDraft {
  /** Absent: the database makes one. */
  readonly id?: string;
  readonly reason: string;
  readonly batchId: string | null;
  readonly mixId: string | null;
  readonly personId: string | null;
  readonly priceMinor: number | null;
  readonly correctsId: string | null;
  readonly key: string;
  readonly at: Instant;
}

/** Appends lines to the book of a lot and brings its row along. Returns the book after them. */
export async function appendMovements(tx: Tx, book: LotBook, movements: readonly NewMovement[]): Promise<LotBook> {
  if (movements.length === 0) return book;
  await tx.stockMovement.createMany({
    data: movements.map(({ quantityMilli, leftMilli, at, ...movement }, index) => ({
      ...movement,
      lotId: book.lotId,
      order: book.lastOrder + 1 + index,
      quantityMilli: BigInt(quantityMilli),
      leftMilli: BigInt(leftMilli),
      at: new Date(at),
    })),
  });
  const movedMilli = movements.reduce((sum, movement) => sum + movement.quantityMilli, 0);
  const after = {
    lotId: book.lotId,
    leftMilli: book.leftMilli + movedMilli,
    lastOrder: book.lastOrder + movements.length,
  };
  const paid = movements.reduce((sum, movement) => sum + (movement.priceMinor ?? 0), 0);
  await tx.lot.update({
    where: { id: book.lotId },
    data: {
      movedMilli: { increment: BigInt(movedMilli) },
      lastOrder: after.lastOrder,
      isUsedUp: after.leftMilli === 0,
      ...(paid === 0 ? {} : { priceMinor: { increment: paid } }),
    },
  });
  return after;
}
