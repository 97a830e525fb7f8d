import type { CutBar } from '@/lib/bom/cut-list';
import { takenByCut } from '@/lib/prepare/cut-taken';
import { toMilli } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import type { Tx } from '@/prisma/client';
import { findMovement, standingMilli } from '@/prisma/data/stock';
import { wireGPerMm } from '@/prisma/data/wire-mass';
import { type MoveLotResult, moveLot } from './move-lot';

/** A length of a cut list that was cut, or was not cut after all. */
export interface CutWire {
  readonly bar: CutBar;
  readonly lotId: string;
  /** Length of a rod where the lot is a bundle. */
  readonly rodMm: number | null;
  readonly batchId: string;
  /** Begins the keys of all movements of this length, so that they are found again. */
  readonly mark: string;
  readonly personId: string | null;
  readonly key: string;
  readonly nowAt: Instant;
}

/** Takes the wire of one length from its lot for the batch; an offcut that goes on as the lot's length stays there. */
export async function takeCutWire(tx: Tx, cut: CutWire): Promise<MoveLotResult> {
  const { lotId, batchId, mark, personId, key, nowAt } = cut;
  const milli = await inLotUnit(tx, lotId, takenByCut(cut.bar, cut.rodMm));
  if (milli === null) return NO_MASS;
  const moved = await moveLot(tx, {
    lotId,
    request: { kind: 'issue', milli, foundLeftMilli: null },
    reason: CUT,
    batchId,
    mixId: null,
    correctsId: null,
    priceMinor: null,
    personId,
    key: mark + key,
    nowAt,
  });
  if (moved.ok || moved.code !== 'not-enough') return moved;
  const { field: _, ...refusal } = moved;
  return { ...refusal, message: `${moved.message} Count the lot in Stock, then tick again or prepare anew.` };
}

/** Gives the wire of one length back to its lot. Null: nothing of it stands in the book. */
export async function returnCutWire(tx: Tx, cut: CutWire): Promise<MoveLotResult | null> {
  const { lotId, batchId, mark, personId, key, nowAt } = cut;
  const rows = await tx.stockMovement.findMany({
    where: { lotId, batchId, kind: 'issue', key: { startsWith: mark } },
    select: { id: true },
    orderBy: { order: 'desc' },
    take: 1,
  });
  const movement = rows[0] === undefined ? null : await findMovement(tx, rows[0].id);
  if (movement === null) return null;
  const of = { kind: movement.kind, standingMilli: await standingMilli(tx, movement) };
  if (of.standingMilli === 0) return null;
  return moveLot(tx, {
    lotId,
    request: { kind: 'correction', of, insteadMilli: 0 },
    reason: NOT_CUT,
    batchId,
    mixId: null,
    correctsId: movement.id,
    priceMinor: null,
    personId,
    key: mark + key,
    nowAt,
  });
}

/** A length in thousandths of the lot's unit; null: kept by weight, and what a metre weighs is not known any more. */
async function inLotUnit(tx: Tx, lotId: string, lengthMm: number): Promise<number | null> {
  const lot = await tx.lot.findUnique({ where: { id: lotId }, select: { quantityUnit: true, materialId: true } });
  if (lot?.quantityUnit !== 'g') return toMilli(lengthMm);
  const gPerMm = (await wireGPerMm(tx, [lot.materialId])).get(lot.materialId);
  return gPerMm === undefined ? null : toMilli(lengthMm * gPerMm);
}

const NO_MASS: MoveLotResult = {
  ok: false,
  code: 'no-lot',
  message:
    'This lot is kept by weight, and the wire has no diameter or alloy any more. Enter them with the wire and tick again.',
};

const CUT = 'Cut by the cut list.';
const NOT_CUT = 'Not cut after all.';
