import { decideMovement, fromMilli, type MovementDecision, type MovementRequest } from '@/lib/stock/ledger';
import { stockText } from '@/lib/stock/stock-text';
import type { Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import type { Tx } from '@/prisma/client';
import { findLot, type Lot } from '@/prisma/data/lots';
import { getShop, type ShopSettings } from '@/prisma/data/shop';
import { appendMovements, findMovementByKey, listLotBooks } from '@/prisma/data/stock';
import type { Refusal } from './command-result';

export type MoveLotResult =
  | {
      readonly ok: true;
      /** The same movement was taken in before under this key. */
      readonly isRepeat: boolean;
      /** In thousandths of the lot's unit. */
      readonly leftMilli: number;
    }
  | Refusal<'no-lot' | 'no-batch' | 'not-enough' | 'nothing' | 'not-correctable' | 'no-price' | 'key-reused'>;

export interface LotMove {
  readonly lotId: string;
  readonly request: MovementRequest;
  readonly reason: string;
  readonly batchId: string | null;
  readonly mixId: string | null;
  readonly correctsId: string | null;
  readonly priceMinor: number | null;
  readonly personId: string | null;
  readonly key: string;
  readonly nowAt: Instant;
}

/**
 * Moves the stock of one lot inside a transaction, in which no other writer runs: of two who take the last of it the
 * second is refused. Sent again under the same key it moves nothing and answers as the first time.
 */
export async function moveLot(tx: Tx, move: LotMove): Promise<MoveLotResult> {
  const { lotId, request, key, batchId } = move;
  const known = await findMovementByKey(tx, key);
  const lot = await findLot(tx, lotId);
  const book = (await listLotBooks(tx, [lotId])).get(lotId);
  if (lot === null || book === undefined) return NO_LOT;
  if (known !== null) {
    if (known.lotId !== lotId || known.kind !== request.kind) return KEY_REUSED;
    return { ok: true, isRepeat: true, leftMilli: book.leftMilli };
  }
  if (batchId !== null && (await tx.batch.count({ where: { id: batchId } })) === 0) return NO_BATCH;
  const decision = decideMovement(book.leftMilli, request);
  const shop = await getShop(tx);
  if (!decision.ok) return refusalOf(decision, lot, shop);
  const last = decision.drafts.length - 1;
  const after = await appendMovements(
    tx,
    book,
    decision.drafts.map((draft, index) => ({
      ...draft,
      ...(index === last
        ? { reason: move.reason, batchId, correctsId: move.correctsId, priceMinor: move.priceMinor, key }
        : { reason: COUNT_WAS_WRONG, batchId: null, correctsId: null, priceMinor: null, key: `${key}-found` }),
      mixId: move.mixId,
      personId: move.personId,
      at: move.nowAt,
    })),
  );
  if (request.kind === 'issue' && lot.openedOn === null) await markOpened(tx, lot, shop, move.nowAt);
  return { ok: true, isRepeat: false, leftMilli: after.leftMilli };
}

/** What a correction says that made room for something taken beyond the book. */
export const COUNT_WAS_WRONG = 'The count was wrong.';

/** What is taken from has been opened. */
async function markOpened(tx: Tx, { id, receivedOn }: Lot, { timeZone }: ShopSettings, nowAt: Instant): Promise<void> {
  const today = wallTimeAt(nowAt, timeZone).day;
  await tx.lot.update({ where: { id }, data: { openedOn: today < receivedOn ? receivedOn : today } });
}

const NO_LOT: MoveLotResult = { ok: false, code: 'no-lot', message: 'This lot is not in Stock any more.' };

const NO_BATCH: MoveLotResult = {
  ok: false,
  code: 'no-batch',
  message: 'This batch is not there any more. Choose another.',
  field: 'batchId',
};

const KEY_REUSED: MoveLotResult = {
  ok: false,
  code: 'key-reused',
  message: 'This form was sent before for something else. Open the page anew.',
};

function refusalOf(decision: Exclude<MovementDecision, { ok: true }>, lot: Lot, shop: ShopSettings): MoveLotResult {
  switch (decision.code) {
    case 'not-enough': {
      const text = (milli: number) => stockText(fromMilli(milli), lot.quantityUnit, shop);
      const left = decision.leftMilli === 0 ? 'nothing' : `only ${text(decision.leftMilli)}`;
      const message = `By the book ${left} is left of lot ${lot.code}: ${text(decision.shortMilli)} too little. Somebody may have taken it just now. If more lies there the count was wrong: say what is really left.`;
      return { ok: false, code: 'not-enough', message, field: 'milli' };
    }
    case 'nothing':
      return { ok: false, code: 'nothing', message: 'That changes nothing: it says what is written already.' };
    case 'not-correctable': {
      const message = 'Counts and corrections stay as they are. Count the lot once more instead.';
      return { ok: false, code: 'not-correctable', message };
    }
  }
}
