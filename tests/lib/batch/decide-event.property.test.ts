import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { decideEvent } from '@/lib/batch/decide-event';
import { nextMixNumber } from '@/lib/batch/decide-mix';
import { recordedAs } from '@/lib/batch/decision';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { KnownBatch, StageGroup } from '@/lib/batch/evaluation';
import type { BatchEvent, BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan } from '@/lib/batch/plan';
import { releaseBook } from '@/lib/batch/release-book';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { correctableBody, PLAIN_CURE, planArbitrary, RUNS, SHEETS } from './arbitrary-batch';
import { hoursOn } from './workshop';

const figures = new Map<string, number>();
function count(what: string): void {
  figures.set(what, (figures.get(what) ?? 0) + 1);
}

afterAll(() => {
  const told = [...figures].sort(([, a], [, b]) => b - a).map(([what, times]) => `${times} ${what}`);
  console.info(`decide: ${RUNS} walks; ${told.join(', ')}`);
});

/** One step of somebody at the bench: hours later, something likely or something wild. */
const step = fc.record({
  hours: fc.constantFrom(0, 0.2, 0.5, 3, 6, 14, 30),
  /** Written down this much later than it happened. */
  lateHours: fc.constantFrom(0, 0, 0, 0, 1, 10),
  intent: fc.constantFrom(
    'go-on',
    'go-on',
    'go-on',
    'go-on',
    'remedy',
    'correct',
    'replace',
    'close',
    'finish',
    'wild',
  ),
  pick: fc.nat(),
  share: fc.nat(3),
  sheet: fc.constantFrom(...SHEETS),
  wild: correctableBody,
});
type Step = Parameters<Parameters<typeof step.map>[0]>[0];

/** What the step says, in the batch as it stands. */
function bodyOf(batch: KnownBatch, taken: Step, at: Instant): BatchEventBody {
  const { state, plan } = batch;
  const group = chosenGroup(batch, taken, at);
  const seq = 1 + (taken.pick % (state.lastSeq + 1));
  const running = state.mixes.filter((mix) => mix.closedAt === null);
  switch (taken.intent) {
    case 'go-on':
      return group === undefined ? taken.wild : goOn(batch, group, taken);
    case 'remedy': {
      if (group?.status.kind !== 'window-closed') return taken.wild;
      return { kind: 'window-remedied', operationId: group.status.operationId, pieces: group.pieces };
    }
    case 'correct':
      return { kind: 'corrected', seq, reason: 'slip', replacement: null };
    case 'replace': {
      const wrong = state.history[seq - 1]?.event;
      const body = wrong === undefined ? taken.wild : shortened(wrong.body, taken);
      return { kind: 'corrected', seq, reason: 'slip', replacement: { at: wrong?.at ?? at, body } };
    }
    case 'close':
      return { kind: 'mix-closed', mixId: running[taken.pick % Math.max(1, running.length)]?.mixId ?? 'none' };
    case 'finish':
      return state.finishedAt === null ? { kind: 'batch-finished' } : { kind: 'batch-reopened' };
    case 'wild':
      return plan.quantity % 2 === 0 && taken.pick % 5 === 0 ? { kind: 'noted', text: 'x', pieces: [1] } : taken.wild;
  }
}

function chosenGroup(batch: KnownBatch, { pick, intent }: Step, at: Instant): StageGroup | undefined {
  const { groups } = evaluateBatch(batch, at);
  const likely = groups.filter(({ status }) => (intent === 'remedy' ? 'window-closed' : 'ready') === status.kind);
  const from = likely.length > 0 && pick % 4 !== 0 ? likely : groups;
  return from[pick % Math.max(1, from.length)];
}

function goOn(
  { plan, state }: KnownBatch,
  group: StageGroup,
  { share, sheet }: Pick<Step, 'share' | 'sheet'>,
): BatchEventBody {
  const operation = plan.operations.find(({ id }) => id === group.operationId);
  if (operation === undefined) throw new Error('a group names an operation of the plan');
  const pieces = group.pieces.slice(0, Math.max(1, group.pieces.length - share));
  const kind = recordedAs(operation);
  if (kind === 'work') return { kind: 'work-done', operationId: operation.id, pieces };
  const mix = state.mixes.find((candidate) => candidate.operationId === operation.id && candidate.closedAt === null);
  if (mix === undefined) return startOf({ plan, state }, operation.id, sheet);
  if (kind === 'coat') return { kind: 'coat-applied', mixId: mix.mixId, pieces };
  const joints = pieces.flatMap((piece) =>
    operation.anchorIds
      .filter(
        (_, index) =>
          state.pieces[piece - 1]?.operations[plan.operations.indexOf(operation)]?.joints[index]?.set == null,
      )
      .slice(share % 2)
      .map((anchorId) => ({ piece, anchorId })),
  );
  return { kind: 'joints-set', mixId: mix.mixId, joints };
}

function startOf(
  batch: Pick<KnownBatch, 'state' | 'plan'>,
  operationId: string,
  sheet: (typeof SHEETS)[number],
): Extract<CorrectableBody, { kind: 'mix-started' }> {
  return {
    kind: 'mix-started',
    mixId: `m${nextMixNumber(batch)}`,
    number: nextMixNumber(batch),
    operationId,
    materialId: 'slow',
    materialName: 'Slow epoxy',
    sheet,
    massG: 20,
    temperatureC: 20,
    lotIds: [],
  };
}

/** The same with a piece less, or another mass: what a correction mostly is. */
function shortened(body: BatchEventBody, { wild, share }: Step): CorrectableBody {
  switch (body.kind) {
    case 'work-done':
    case 'coat-applied':
      return { ...body, pieces: body.pieces.slice(share % 2) };
    case 'joints-set':
      return { ...body, joints: body.joints.slice(share % 2) };
    case 'mix-started':
      return { ...body, massG: body.massG + share };
    default:
      return wild;
  }
}

function knownBatch(plan: BatchPlan, events: readonly BatchEvent[]): KnownBatch {
  return { plan, state: foldBatch(plan, events), releases: releaseBook(PLAIN_CURE) };
}

function openingOf(plan: BatchPlan): BatchEvent {
  const body = { kind: 'batch-opened', quantity: plan.quantity } as const;
  return { seq: 1, key: 'key-1', at: hoursOn(0), recordedAt: hoursOn(0), personId: 'ana', body };
}

/** Walks the steps and hands over every batch on the way with what was decided. */
function walk(
  plan: BatchPlan,
  steps: readonly Step[],
  visit: (batch: KnownBatch, body: BatchEventBody, nowAt: Instant, accepted: KnownBatch | null) => void,
): void {
  const events = [openingOf(plan)];
  let batch = knownBatch(plan, events);
  let nowAt = hoursOn(0);
  for (const taken of steps) {
    nowAt += taken.hours * HOUR_MS;
    const at = nowAt - taken.lateHours * HOUR_MS;
    const body = bodyOf(batch, taken, at);
    const decision = decideEvent(batch, { at, body }, nowAt);
    count(decision.ok ? `${body.kind} taken in` : decision.refusal.code);
    if (!decision.ok) {
      visit(batch, body, nowAt, null);
      continue;
    }
    const seq = events.length + 1;
    events.push({ seq, key: `key-${seq}`, at, recordedAt: nowAt, personId: 'ana', body });
    const after = knownBatch(plan, events);
    visit(batch, body, nowAt, after);
    batch = after;
  }
}

const steps = fc.array(step, { minLength: 10, maxLength: 60, size: 'max' });

describe('at the bench', () => {
  it('what is taken in folds without an anomaly', () => {
    fc.assert(
      fc.property(planArbitrary, steps, (plan, taken) => {
        walk(plan, taken, (_, body, __, accepted) => {
          if (accepted !== null) expect([body.kind, accepted.state.anomalies]).toEqual([body.kind, []]);
        });
      }),
      { numRuns: RUNS },
    );
  });

  it('what is shown as ready is taken in, what waits, is closed or blocked is refused for that reason', () => {
    fc.assert(
      fc.property(planArbitrary, steps, (plan, taken) => {
        walk(plan, taken.slice(0, 20), (batch, _, nowAt) => agrees(batch, nowAt));
      }),
      { numRuns: Math.ceil(RUNS / 2) },
    );
  });
});

/** Tries every group of the evaluation as an action, with a mix of its own where one is needed. */
function agrees(batch: KnownBatch, at: Instant): void {
  if (batch.state.finishedAt !== null) return;
  for (const group of evaluateBatch(batch, at).groups) {
    const prepared = withMix(batch, group.operationId, at);
    const body = goOn(prepared, group, { share: 0, sheet: SHEETS[0] ?? fail() });
    const decision = decideEvent(prepared, { at, body }, at);
    const verdict = decision.ok
      ? decision.warnings.map(({ code }) => code).filter((code) => code !== 'late')
      : decision.refusal.code;
    expect([group.status.kind, verdict]).toEqual([group.status.kind, VERDICTS[group.status.kind]]);
    count(`${group.status.kind} agreed`);
  }
}

const VERDICTS = {
  ready: [],
  'not-judged': ['not-judged'],
  waits: 'not-yet',
  'window-closed': 'window-closed',
  blocked: 'blocked',
} as const;

/** The batch with a running mix for the operation, unless it is work. */
function withMix(batch: KnownBatch, operationId: string, at: Instant): KnownBatch {
  const { plan, state } = batch;
  const operation = plan.operations.find(({ id }) => id === operationId);
  if (operation === undefined || recordedAs(operation) === 'work') return batch;
  if (state.mixes.some((mix) => mix.operationId === operationId && mix.closedAt === null)) return batch;
  const seq = state.lastSeq + 1;
  const body = { ...startOf(batch, operationId, SHEETS[0] ?? fail()), mixId: `own-${seq}` };
  const events = state.history.map(({ event }) => event);
  return knownBatch(plan, [...events, { seq, key: `key-${seq}`, at, recordedAt: at, personId: 'ana', body }]);
}

function fail(): never {
  throw new Error('there are sheets');
}
