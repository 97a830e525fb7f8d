import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { benchView } from '@/lib/batch/bench-view';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { BatchEvent, BatchEventBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import { releaseBook } from '@/lib/batch/release-book';
import { timelineOf } from '@/lib/batch/timeline';
import { atArbitrary, correctableBody, PLAIN_CURE, planAndEvents, RUNS } from './arbitrary-batch';
import { factsOf, hoursOn } from './workshop';

const figures = new Map<string, number>();
function count(what: string): void {
  figures.set(what, (figures.get(what) ?? 0) + 1);
}

afterAll(() => {
  const told = [...figures].map(([what, times]) => `${times} ${what}`);
  console.info(`fold: ${RUNS} histories a property; ${told.join(', ')}`);
});

/** The events in order, in chunks of which each begins with some of what came before, as a sender repeats itself. */
function replayed(events: readonly BatchEvent[], chunk: number, repeated: number): BatchEvent[] {
  const sent: BatchEvent[] = [];
  for (let start = 0; start < events.length; start += chunk) {
    sent.push(...events.slice(Math.max(0, start - repeated), start + chunk));
  }
  return sent;
}

/** The event an arbitrary number points at, if it may be corrected; its other corrections are left out. */
function correctable(events: readonly BatchEvent[], pick: number) {
  const target = events[pick % Math.max(1, events.length)];
  if (target === undefined || target.body.kind === 'batch-opened') return null;
  const others = events.filter(
    ({ seq, body }) => seq === target.seq || body.kind !== 'corrected' || body.seq !== target.seq,
  );
  return { target, others };
}

function correction(events: readonly BatchEvent[], body: Extract<BatchEventBody, { kind: 'corrected' }>): BatchEvent {
  const seq = (events.at(-1)?.seq ?? 0) + 100;
  return { seq, key: `correction-${seq}`, at: hoursOn(1), recordedAt: hoursOn(1), personId: 'ana', body };
}

describe('any history', () => {
  it('folds, is evaluated and shown without an error and without a number that is none', () => {
    fc.assert(
      fc.property(planAndEvents, atArbitrary, ({ plan, events }, nowAt) => {
        const state = foldBatch(plan, events);
        const batch = { plan, state, releases: releaseBook(PLAIN_CURE) };
        const evaluation = evaluateBatch(batch, nowAt);
        const entry = { ...batch, batchId: 'b', number: 1, dueOn: null, evaluation };
        const shown = { groups: evaluation.groups, view: benchView([entry], hoursOn(5)), timeline: timelineOf(batch) };
        const { pieces, mixes, clocks } = state;
        const instants: number[] = [];
        JSON.stringify({ shown, pieces, clocks, potLives: mixes.map(({ potLife }) => potLife) }, (key, value) => {
          if (typeof value === 'number' && key.endsWith('At')) instants.push(value);
          return value;
        });
        expect(instants.every(Number.isFinite)).toBe(true);
        expect(state.history.length).toBe(events.length);
        expect(state.history.flatMap(({ anomalies }) => anomalies)).toEqual(state.anomalies);
        count(state.anomalies.length > 0 ? 'with anomalies' : 'without');
      }),
      { numRuns: RUNS },
    );
  });

  it('gives the same state replayed in chunks, with repeats, and in any order', () => {
    fc.assert(
      fc.property(planAndEvents, fc.integer({ min: 1, max: 7 }), fc.nat(7), ({ plan, events }, chunk, repeated) => {
        const state = foldBatch(plan, events);
        const resent = events.map((event, index) => ({ ...event, seq: events.length + index + 1 }));
        expect(foldBatch(plan, replayed(events, chunk, repeated))).toEqual(state);
        // The same keys once more under new numbers are no new events.
        expect(foldBatch(plan, [...events, ...resent])).toEqual(state);
        expect(foldBatch(plan, [...resent, ...events].reverse())).toEqual(state);
      }),
      { numRuns: RUNS },
    );
  });

  it('says with an event taken back what it says without the event', () => {
    fc.assert(
      fc.property(planAndEvents, fc.nat(), ({ plan, events }, pick) => {
        const found = correctable(events, pick);
        if (found === null) return;
        const { target, others } = found;
        const body = { kind: 'corrected', seq: target.seq, reason: 'slip', replacement: null } as const;
        const corrected = foldBatch(plan, [...others, correction(events, body)]);
        // Corrections of it go with it: of an event that is not there they would be anomalies.
        const without = foldBatch(
          plan,
          others.filter(({ seq }) => seq !== target.seq),
        );
        expect(factsOf(corrected)).toEqual(factsOf(without));
        expect(corrected.history.find(({ event }) => event.seq === target.seq)?.standing).toBe('void');
        count('taken back');
      }),
      { numRuns: RUNS },
    );
  });

  it('says with an event replaced what it says with the replacement in its place', () => {
    fc.assert(
      fc.property(planAndEvents, fc.nat(), correctableBody, atArbitrary, ({ plan, events }, pick, newBody, at) => {
        const found = correctable(events, pick);
        if (found === null) return;
        const { target, others } = found;
        const replacement = { at, body: newBody };
        const body = { kind: 'corrected', seq: target.seq, reason: 'slip', replacement } as const;
        const corrected = foldBatch(plan, [...others, correction(events, body)]);
        const instead = others.map((event) => (event.seq === target.seq ? { ...event, at, body: newBody } : event));
        expect(factsOf(corrected)).toEqual(factsOf(foldBatch(plan, instead)));
        count('replaced');
      }),
      { numRuns: RUNS },
    );
  });

  it('says what it said before when a correction is itself taken back', () => {
    fc.assert(
      fc.property(planAndEvents, fc.nat(), ({ plan, events }, pick) => {
        const found = correctable(events, pick);
        if (found === null) return;
        const { target, others } = found;
        const first = correction(events, { kind: 'corrected', seq: target.seq, reason: 'slip', replacement: null });
        const undo = { kind: 'corrected', seq: first.seq, reason: 'it was right', replacement: null } as const;
        const second = { ...correction([first], undo), key: 'undo' };
        expect(factsOf(foldBatch(plan, [...others, first, second]))).toEqual(factsOf(foldBatch(plan, others)));
        count('restored');
      }),
      { numRuns: RUNS },
    );
  });
});
