import type { PinRequest } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type PinVisitResult = Done | Refusal<'no-batch' | 'no-operation' | 'no-person' | 'over'>;

/** Pins a visit of an open batch's operation at an hour, or lets it go. A pin before now is refused. */
export function pinVisit(
  database: Db,
  { batchId, taskKey, startAt, personId }: PinRequest,
  nowAt: Instant,
): Promise<PinVisitResult> {
  return writeTx(database, async (tx): Promise<PinVisitResult> => {
    const batch = await tx.batch.findUnique({ where: { id: batchId }, select: { status: true, revisionId: true } });
    if (batch === null || batch.status !== 'open') {
      return { ok: false, code: 'no-batch', message: 'This batch is not open any more. Reload the page.' };
    }
    if (startAt === null) {
      await tx.planPin.deleteMany({ where: { batchId, taskKey } });
      return DONE;
    }
    if (startAt < nowAt) {
      return { ok: false, code: 'over', message: 'This hour has passed. Choose one that is still to come.' };
    }
    const operationId = taskKey.slice(0, taskKey.lastIndexOf('.'));
    const { revisionId } = batch;
    if ((await tx.routeOperation.count({ where: { id: operationId, revisionId } })) === 0) {
      return { ok: false, code: 'no-operation', message: 'This step is not on the route of the batch.' };
    }
    if (personId !== null && (await tx.person.count({ where: { id: personId } })) === 0) {
      return { ok: false, code: 'no-person', message: 'This person is not in the list any more.' };
    }
    const data = { startAt: new Date(startAt), personId };
    await tx.planPin.upsert({
      where: { batchId_taskKey: { batchId, taskKey } },
      create: { batchId, taskKey, ...data, createdAt: new Date(nowAt) },
      update: data,
    });
    return DONE;
  });
}
