import type { ImpossibleVisit, Timetable } from '@/lib/contracts/stored-plan';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import type { SmallestReason } from '@/lib/schedule/smallest-reason';
import { unplacedWords, visitLabel } from './plan-words';
import { liftSentences, reasonSentence } from './reason-words';
import type { ShopProblem } from './shop-problem';

/** What a plan has no place for, what only waits for that, and pins that cannot be kept, each with its reason. */
export function impossibleVisits(
  shop: ShopProblem,
  plan: ShopPlan,
  reasons: readonly SmallestReason[],
): Pick<Timetable, 'unplaced' | 'pinClashes'> {
  const known = new Map(reasons.map((reason) => [reason.taskId, reason]));
  const unplacedIds = new Set(plan.unplaced.map(({ taskId }) => taskId));
  const told = (reason: SmallestReason) => ({
    key: reason.taskId,
    label: visitLabel(shop.about.get(reason.taskId)),
    reason: reasonSentence(reason, shop),
    lifts: liftSentences(reason, shop),
    waitsForKey: null,
  });
  return {
    unplaced: plan.unplaced.map(({ taskId, reason }): ImpossibleVisit => {
      const found = known.get(taskId);
      if (found !== undefined) return told(found);
      return {
        key: taskId,
        label: visitLabel(shop.about.get(taskId)),
        reason: unplacedWords(reason, shop),
        lifts: [],
        waitsForKey: reason.kind === 'waits-for-unplaced' ? reason.taskId : null,
      };
    }),
    pinClashes: reasons.filter(({ taskId }) => !unplacedIds.has(taskId)).map(told),
  };
}
