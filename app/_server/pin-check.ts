import 'server-only';
import { randomUUID } from 'node:crypto';
import type { PinCheck } from '@/app/_plan/pin-effect';
import { shopProblemInTurns } from '@/app/_plan/shop-problem';
import type { PinRequest } from '@/lib/contracts/stored-plan';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import type { ShopSettings } from '@/prisma/data/shop';
import { loadPlanInput } from './plan-input';
import { startPlanJob } from './plan-worker';

/** What a pin would mean, as the planner's thread finds it. Nothing is saved. Throws when the thread fails. */
export async function checkPin(database: Db, shop: ShopSettings, pin: PinRequest, nowAt: Instant): Promise<PinCheck> {
  const { batchId, taskKey, startAt, personId } = pin;
  const input = await loadPlanInput(database, shop, nowAt);
  const pins = input.pins.filter((one) => one.batchId !== batchId || one.taskKey !== taskKey);
  const made = await shopProblemInTurns({ ...input, pins });
  const { problem } = made;
  const pinned = {
    taskId: `${batchId}:${taskKey}`,
    state:
      startAt === null
        ? ({ kind: 'open' } as const)
        : {
            kind: 'pinned' as const,
            startMinute: Math.round((startAt - problem.epochAt) / MINUTE_MS),
            personId: problem.people.some(({ id }) => id === personId) ? personId : null,
          },
  };
  return new Promise((resolve, reject) => {
    const job = { kind: 'pin', jobId: randomUUID(), shop: made, pinned, zone: shop.timeZone } as const;
    startPlanJob(job, (news) => {
      if (news.kind === 'pin') resolve(news.check);
      if (news.kind === 'failed') reject(new Error(`the planner failed: ${news.message}`));
    });
  });
}
