import { isInstant } from '@/lib/batch/apply-event';
import { decideClaim } from '@/lib/batch/decide-claim';
import { decideCorrection } from '@/lib/batch/decide-correction';
import type { Decision } from '@/lib/batch/decision';
import { refused } from '@/lib/batch/decision';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEventBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';

/** How far a device's clock may run ahead of the server's before its action counts as in the future. Chosen. */
export const FUTURE_SLACK_MS = MINUTE_MS;

/**
 * Whether an action is taken in as the batch's next event.
 *
 * `at` is when it happened at the bench, and whether the pieces were ready is judged at that instant; `nowAt` is the
 * server's time. What is taken in folds without an anomaly. A joint set past the pot life is taken in with a warning,
 * for it happened; so is what neither sheet nor temperature can judge. A correction is taken in when the history with
 * it makes as much sense as without it.
 */
export function decideEvent(
  batch: KnownBatch,
  action: { readonly at: Instant; readonly body: BatchEventBody },
  nowAt: Instant,
): Decision {
  const { at, body } = action;
  const times = decideInstant(at, nowAt);
  if (times !== null) return times;
  if (body.kind !== 'corrected') return decideClaim(batch, { at, body }, null);
  if (body.replacement !== null) {
    const replacementTimes = decideInstant(body.replacement.at, nowAt);
    if (replacementTimes !== null) return replacementTimes;
  }
  return decideCorrection(batch, { at, body });
}

function decideInstant(at: Instant, nowAt: Instant): Decision | null {
  if (!isInstant(at)) return refused({ code: 'bad-instant' });
  if (at > nowAt + FUTURE_SLACK_MS) return refused({ code: 'in-future', at, nowAt });
  return null;
}
