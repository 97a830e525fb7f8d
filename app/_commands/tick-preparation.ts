import { barOfItem } from '@/lib/prepare/cut-taken';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findPreparation } from '@/prisma/data/preparations';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import type { MoveLotResult } from './move-lot';
import { returnCutWire, takeCutWire } from './take-cut-wire';

export type TickResult = Done | Refusal<'no-preparation'> | Extract<MoveLotResult, { ok: false }>;

export interface Tick {
  readonly preparationId: string;
  readonly item: string;
  readonly isDone: boolean;
  /** Made with the button: sent again it moves nothing. */
  readonly key: string;
}

/**
 * Ticks a dose or a length off, or takes the tick back. Sent twice it counts once, with who was first. A length that is
 * cut leaves its lot with the tick; taken back it is given back to the lot by a correction.
 */
export function tickPreparation(
  database: Db,
  { preparationId, item, isDone, key }: Tick,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<TickResult> {
  return writeTx(database, async (tx): Promise<TickResult> => {
    const row = await tx.preparation.findUnique({ where: { id: preparationId }, select: { batchId: true } });
    const stored = row === null ? null : await findPreparation(tx, row.batchId);
    if (row === null || stored === null || stored.id !== preparationId) {
      return { ok: false, code: 'no-preparation', message: 'This was prepared anew. Open the page again.' };
    }
    if (stored.ticks.has(item) === isDone) return DONE;
    const bar = barOfItem(stored.body, item);
    if (bar !== null && bar.stockId !== null) {
      const cut = {
        bar,
        lotId: bar.stockId,
        rodMm: stored.body.choices.rodMm,
        batchId: row.batchId,
        mark: `${preparationId}:${item}:`,
        personId,
        key,
        nowAt,
      };
      const moved = isDone ? await takeCutWire(tx, cut) : await returnCutWire(tx, cut);
      if (moved !== null && !moved.ok) return moved;
      // The first answer to this press got lost, and the tick was taken back since.
      if (moved?.isRepeat === true) return DONE;
    }
    if (isDone) await tx.preparationTick.create({ data: { preparationId, item, personId, at: new Date(nowAt) } });
    else await tx.preparationTick.deleteMany({ where: { preparationId, item } });
    return DONE;
  });
}
