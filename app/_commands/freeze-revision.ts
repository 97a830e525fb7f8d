import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Done } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, takeDraft } from './draft-revision';

/** Freezes a draft revision: from now on it is never changed, and batches of it mean the same thing for ever. */
export function freezeRevision(
  database: Db,
  revisionId: string,
  seenAt: Instant,
  nowAt: Instant,
): Promise<Done | DraftRefusal> {
  return writeTx(database, async (tx): Promise<Done | DraftRefusal> => {
    const draft = await takeDraft(tx, { revisionId, seenAt, nowAt });
    if (!draft.ok) return draft;
    await tx.revision.update({ where: { id: revisionId }, data: { frozenAt: new Date(nowAt) } });
    return DONE;
  });
}
