import { type Db, writeTx } from '@/prisma/client';
import { findPreparation } from '@/prisma/data/preparations';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type WeighBackResult = Done | Refusal<'no-preparation' | 'more-left'>;

export interface WeighBack {
  readonly preparationId: string;
  readonly operationId: string;
  /** In all cups of the card when they were mixed, g. */
  readonly mixedG: number;
  /** What was left of it in cups and on sticks, g. */
  readonly leftG: number;
}

/** Keeps what was left of a card's cups, from which the shop's own waste is taken. Weighed again it is replaced. */
export function weighBack(database: Db, { preparationId, ...weighed }: WeighBack): Promise<WeighBackResult> {
  return writeTx(database, async (tx): Promise<WeighBackResult> => {
    const row = await tx.preparation.findUnique({ where: { id: preparationId }, select: { batchId: true } });
    const stored = row === null ? null : await findPreparation(tx, row.batchId);
    const card = stored?.body.cards.find(({ operationId }) => operationId === weighed.operationId);
    if (stored?.id !== preparationId || card === undefined || card.wasteKind === null || card.netG <= 0) {
      return { ok: false, code: 'no-preparation', message: 'This was prepared anew. Open the page again.' };
    }
    if (weighed.leftG >= weighed.mixedG) {
      const message = 'No more can be left than was mixed. Weigh the cups without what they weigh empty.';
      return { ok: false, code: 'more-left', message, field: 'leftG' };
    }
    const others = stored.body.weighed.filter(({ operationId }) => operationId !== weighed.operationId);
    const body = { ...stored.body, weighed: [...others, { ...weighed, kind: card.wasteKind, netG: card.netG }] };
    await tx.preparation.update({ where: { id: preparationId }, data: { body: JSON.parse(JSON.stringify(body)) } });
    return DONE;
  });
}
