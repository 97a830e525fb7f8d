import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type TickResult = Done | Refusal<'no-preparation'>;

export interface Tick {
  readonly preparationId: string;
  readonly item: string;
  readonly isDone: boolean;
}

/** Ticks a dose or a length off, or takes the tick back. Sent twice it counts once, with who was first. */
export function tickPreparation(
  database: Db,
  { preparationId, item, isDone }: Tick,
  { personId, nowAt }: { readonly personId: string | null; readonly nowAt: Instant },
): Promise<TickResult> {
  return writeTx(database, async (tx): Promise<TickResult> => {
    if ((await tx.preparation.count({ where: { id: preparationId } })) === 0) {
      return { ok: false, code: 'no-preparation', message: 'This was prepared anew. Open the page again.' };
    }
    const where = { preparationId, item };
    if (!isDone) await tx.preparationTick.deleteMany({ where });
    else if ((await tx.preparationTick.count({ where })) === 0) {
      await tx.preparationTick.create({ data: { ...where, personId, at: new Date(nowAt) } });
    }
    return DONE;
  });
}
