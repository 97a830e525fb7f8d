import { applyEvent } from '@/lib/batch/apply-event';
import { BatchDraft } from '@/lib/batch/batch-draft';
import type { BatchState, HistoryEntry } from '@/lib/batch/batch-state';
import { settleCorrections } from '@/lib/batch/corrections';
import type { BatchEvent } from '@/lib/batch/events';
import { finishState } from '@/lib/batch/finish-state';
import type { BatchPlan } from '@/lib/batch/plan';

/**
 * What a batch's events say about it: its pieces, joints, mixes, cure clocks, notes and history.
 *
 * `plan` is what the batch took over from its revision; `events` are its events, n >= 0, in any order: they are put in
 * order of seq, and the same seq or key twice counts once. Corrections are settled first (`settleCorrections`).
 * Never throws: an event that cannot be, or not wholly, taken in is kept in the history with an anomaly that says so.
 * What is in doubt is left out of the state rather than taken as done, so that nothing is released by a slip.
 *
 * Does not depend on the time of day, nor on temperature but for each mix's own, which ends its pot life.
 */
export function foldBatch(plan: BatchPlan, events: readonly BatchEvent[]): BatchState {
  const draft = new BatchDraft(plan);
  const history: HistoryEntry[] = [];
  for (const settled of settleCorrections(events)) {
    const { event, standing, correctedBySeq, counts, problem } = settled;
    draft.begin(event);
    if (problem !== null) draft.refuse(problem);
    const wrong = counts === null ? null : applyEvent(draft, counts.at, counts.body);
    if (wrong !== null) draft.refuse(wrong);
    history.push({ event, standing, correctedBySeq, anomalies: draft.end() });
  }
  return finishState(draft, history);
}
