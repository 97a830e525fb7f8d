import type { Anomaly } from '@/lib/batch/anomaly';
import type { BatchState } from '@/lib/batch/batch-state';
import { decideClaim } from '@/lib/batch/decide-claim';
import { rising } from '@/lib/batch/decide-pieces';
import type { Decision } from '@/lib/batch/decision';
import { ACCEPTED, refused } from '@/lib/batch/decision';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEvent, BatchEventBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { Instant } from '@/lib/units/instant';

type CorrectionBody = Extract<BatchEventBody, { kind: 'corrected' }>;

/**
 * Whether a correction is taken in: the event must be there, not be the opening, and not be corrected already; a
 * replacement must fit where the original stood; and no later event may lose its sense by it.
 */
export function decideCorrection(
  batch: KnownBatch,
  { at, body }: { readonly at: Instant; readonly body: CorrectionBody },
): Decision {
  const { state, plan } = batch;
  if (state.openedAt === null) return refused({ code: 'not-opened' });
  if (at < state.openedAt) return refused({ code: 'before-opening', openedAt: state.openedAt });
  const target = state.history.find(({ event }) => event.seq === body.seq);
  if (target === undefined) return refused({ code: 'unknown-event', seq: body.seq });
  const wrong = target.event.body;
  if (wrong.kind === 'batch-opened') return refused({ code: 'cannot-correct-opening' });
  if (target.correctedBySeq !== null) {
    return refused({ code: 'already-corrected', seq: body.seq, bySeq: target.correctedBySeq });
  }
  const { replacement } = body;
  if (replacement !== null) {
    if (wrong.kind === 'corrected') return refused({ code: 'correction-only-undone', seq: body.seq });
    if (wrong.kind === 'mix-started' && replacement.body.kind === 'mix-started') {
      if (replacement.body.mixId !== wrong.mixId) return refused({ code: 'mix-id-changed', mixId: wrong.mixId });
    }
    const before = { ...stateBefore(batch, body.seq), history: state.history };
    const fits = decideClaim({ ...batch, state: before }, replacement, body.seq);
    if (!fits.ok) return fits;
    const broken = newlyBroken(state, foldBatch(plan, withCorrection(state, at, body)));
    return broken.length === 0 ? fits : refusedFor(wrong, broken);
  }
  const broken = newlyBroken(state, foldBatch(plan, withCorrection(state, at, body)));
  return broken.length === 0 ? ACCEPTED : refusedFor(wrong, broken);
}

/** The batch as it stood just before an event, with all corrections of what came earlier. */
function stateBefore({ state, plan }: KnownBatch, seq: number): BatchState {
  const events = state.history.map(({ event }) => event);
  return foldBatch(
    plan,
    events.filter((event) => event.seq < seq || event.body.kind === 'corrected'),
  );
}

function withCorrection(state: BatchState, at: Instant, body: CorrectionBody): readonly BatchEvent[] {
  const seq = state.lastSeq + 1;
  // No client makes an empty key, so it is none of those in the history.
  const correction: BatchEvent = { seq, key: '', at, recordedAt: at, personId: null, body };
  return [...state.history.map(({ event }) => event), correction];
}

/** What was in order before and would not be afterwards. */
function newlyBroken(before: BatchState, after: BatchState): readonly Anomaly[] {
  const known = new Set(before.anomalies.map((anomaly) => JSON.stringify(anomaly)));
  return after.anomalies.filter((anomaly) => !known.has(JSON.stringify(anomaly)));
}

function refusedFor(wrong: BatchEventBody, broken: readonly Anomaly[]): Decision {
  const bySeqs = rising(broken.map(({ seq }) => seq));
  if (wrong.kind === 'mix-started' && broken.some(({ code }) => code === 'unknown-mix')) {
    return refused({ code: 'mix-in-use', mixId: wrong.mixId, bySeqs });
  }
  return refused({ code: 'others-depend', bySeqs });
}
