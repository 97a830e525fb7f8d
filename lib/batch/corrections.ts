import type { AnomalyCode } from '@/lib/batch/anomaly';
import type { BatchEvent, BatchEventBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';

/** An event with what counts of it once all corrections are taken in. */
export interface SettledEvent {
  readonly event: BatchEvent;
  readonly standing: 'stands' | 'void' | 'replaced';
  readonly correctedBySeq: number | null;
  /** What counts in its place in the order; null when it is void. */
  readonly counts: { readonly at: Instant; readonly body: BatchEventBody } | null;
  /** Of a correction that cannot be one: why. */
  readonly problem: AnomalyCode | null;
}

/**
 * Every event once, in the order of the batch's history, with the corrections settled. A void event counts for
 * nothing; a replaced one counts as its replacement, in the original's place and at the replacement's instant. A
 * correction that is itself void corrects nothing, so the event it corrected counts again. Of two standing
 * corrections of one event the earlier holds.
 *
 * The same seq or the same key twice is one event. The order in which the events are given does not matter.
 * An event whose seq is no whole number has no place in the history and is left out.
 */
export function settleCorrections(events: readonly BatchEvent[]): readonly SettledEvent[] {
  const distinct = distinctEvents(events);
  const bySeq = new Map(distinct.map((event) => [event.seq, event]));
  const problems = new Map<number, AnomalyCode>();
  const correctionOf = new Map<number, { readonly event: BatchEvent; readonly body: CorrectionBody }>();
  // A correction can only name an earlier event, so from the end every one is settled when it is met.
  for (let index = distinct.length - 1; index >= 0; index--) {
    const event = distinct[index];
    if (event === undefined || event.body.kind !== 'corrected' || correctionOf.has(event.seq)) continue;
    const target = event.body.seq < event.seq ? bySeq.get(event.body.seq) : undefined;
    if (target === undefined) problems.set(event.seq, 'unknown-event');
    else if (target.body.kind === 'batch-opened') problems.set(event.seq, 'cannot-correct-opening');
    else {
      const later = correctionOf.get(target.seq);
      if (later !== undefined) problems.set(later.event.seq, 'already-corrected');
      correctionOf.set(target.seq, { event, body: event.body });
    }
  }
  return distinct.map((event): SettledEvent => {
    const problem = problems.get(event.seq) ?? null;
    const correction = correctionOf.get(event.seq);
    if (correction === undefined) {
      return { event, standing: 'stands', correctedBySeq: null, counts: { at: event.at, body: event.body }, problem };
    }
    const { replacement } = correction.body;
    return {
      event,
      standing: replacement === null ? 'void' : 'replaced',
      correctedBySeq: correction.event.seq,
      counts: replacement,
      problem,
    };
  });
}

type CorrectionBody = Extract<BatchEventBody, { kind: 'corrected' }>;

function distinctEvents(events: readonly BatchEvent[]): readonly BatchEvent[] {
  const seqs = new Set<number>();
  const keys = new Set<string>();
  const placed = events.filter((event) => Number.isSafeInteger(event.seq));
  // Mostly in order as they come; the key only decides between two that claim one seq.
  placed.sort((a, b) => a.seq - b.seq || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  return placed.filter((event) => {
    if (seqs.has(event.seq) || keys.has(event.key)) return false;
    seqs.add(event.seq);
    keys.add(event.key);
    return true;
  });
}
