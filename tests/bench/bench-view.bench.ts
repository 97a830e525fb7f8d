import { benchView } from '@/lib/batch/bench-view';
import { courseReader } from '@/lib/batch/cure-reader';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { BatchEvent, BatchEventBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan, PlannedOperation, Wait } from '@/lib/batch/plan';
import { releaseBook } from '@/lib/batch/release-book';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { lanesOfCourse } from '@/lib/cure/cure-lanes';
import { readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** The computing behind the Bench: 300 open batches of 24 pieces and 8 operations folded, evaluated and put in order. */

const BATCHES = 300;
const PIECES = Array.from({ length: 24 }, (_, index) => index + 1);
const REPEATS = 15;
const NOW_AT = Date.UTC(2026, 1, 20, 0, 0);
const OPENED_AT = NOW_AT - 10 * 24 * HOUR_MS;

const SHEET: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' }],
  milestoneHours: { handle: 6, sand: 24, 'recoat-from': 4, 'recoat-by': 72, paint: 48, 'pull-test': 168, ship: 200 },
  sources: {},
};

const ANCHOR_IDS = ['tie', 'belly', 'tail'];
const PLAN: BatchPlan = {
  quantity: PIECES.length,
  anchors: ANCHOR_IDS.map((id) => ({ id, name: id })),
  operations: [
    operation('shape', 'work'),
    operation('drill', 'work', ['shape', 'done']),
    { ...operation('set', 'glue', ['drill', 'done']), anchorIds: ANCHOR_IDS },
    operation('seal', 'coat', ['set', 'handle']),
    operation('sand', 'work', ['seal', 'sand']),
    operation('paint', 'work', ['sand', 'done']),
    operation('coat-1', 'coat', ['paint', 'done']),
    operation('coat-2', 'coat', ['coat-1', 'recoat']),
  ],
};

function operation(id: string, kind: PlannedOperation['kind'], need?: readonly [string, Wait]): PlannedOperation {
  const needs = need === undefined ? [] : [{ operationId: need[0], wait: need[1] }];
  return { id, name: id, kind, attendedMinutes: 2, materialId: null, anchorIds: [], needs };
}

/** A batch `stage` operations into its route: two mixes an operation, joints piece by piece over twenty minutes. */
function eventsOf(batch: number): BatchEvent[] {
  const stage = 1 + (batch % 8);
  const events: BatchEvent[] = [];
  let at = OPENED_AT + batch * 7 * MINUTE_MS;
  const add = (body: BatchEventBody) => {
    const seq = events.length + 1;
    events.push({ seq, key: `${batch}-${seq}`, at, recordedAt: at, personId: 'ana', body });
  };
  add({ kind: 'batch-opened', quantity: PIECES.length });
  let mixes = 0;
  for (const { id, kind } of PLAN.operations.slice(0, stage)) {
    at += 20 * HOUR_MS;
    if (kind === 'work') add({ kind: 'work-done', operationId: id, pieces: PIECES });
    for (const pieces of kind === 'work' ? [] : [PIECES.slice(0, 12), PIECES.slice(12)]) {
      const mixId = `${batch}-${++mixes}`;
      const cup = {
        operationId: id,
        materialId: 'm',
        materialName: 'Epoxy',
        sheet: SHEET,
        massG: 12,
        temperatureC: 20,
      };
      add({ kind: 'mix-started', mixId, number: mixes, ...cup, lotIds: [] });
      if (kind === 'coat') add({ kind: 'coat-applied', mixId, pieces });
      for (const piece of kind === 'glue' ? pieces : []) {
        at += MINUTE_MS;
        add({ kind: 'joints-set', mixId, joints: ANCHOR_IDS.map((anchorId) => ({ piece, anchorId })) });
      }
      add({ kind: 'mix-closed', mixId });
    }
  }
  return events;
}

/** Two weeks of readings every five minutes. */
function twoWeeks() {
  const count = 14 * 24 * 12;
  const at = Float64Array.from({ length: count }, (_, i) => NOW_AT - (count - i) * 5 * MINUTE_MS);
  const temperatureC = Float64Array.from({ length: count }, (_, i) => 17 + 5 * Math.sin((i * 2 * Math.PI) / 288));
  return readingSeries(at, temperatureC);
}

const SETTINGS = {
  zone: 'America/Chicago',
  profile: { otherwiseC: 16, periods: [] },
  profileToleranceC: 2,
  sensorToleranceC: 0.5,
  floorC: 10,
  ceilingC: 28,
} as const;

interface Timing {
  readonly name: string;
  readonly medianMs: number;
}

function timed(name: string, action: () => void): Timing {
  const times: number[] = [];
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    const startMs = performance.now();
    action();
    times.push(performance.now() - startMs);
  }
  return { name, medianMs: times.sort((a, b) => a - b)[Math.floor(REPEATS / 2)] ?? 0 };
}

/** Prints and returns the medians of the parts. */
export function run(): readonly Timing[] {
  const histories = Array.from({ length: BATCHES }, (_, batch) => eventsOf(batch));
  const course = temperatureCourse(twoWeeks(), SETTINGS, OPENED_AT - HOUR_MS, NOW_AT + 60 * 24 * HOUR_MS);
  const reader = courseReader(lanesOfCourse(course));
  const states = histories.map((events) => foldBatch(PLAN, events));
  const fresh = () => states.map((state) => ({ plan: PLAN, state, releases: releaseBook(reader) }));
  const kept = fresh();
  const entries = kept.map((batch, index) => ({
    ...batch,
    batchId: `b${index}`,
    number: index,
    dueOn: null,
    evaluation: evaluateBatch(batch, NOW_AT),
  }));
  const events = histories.reduce((sum, history) => sum + history.length, 0);
  const clocks = states.reduce((sum, state) => sum + state.clocks.length, 0);
  console.info(`bench view: ${BATCHES} batches, ${events} events, ${clocks} cure clocks`);
  const timings = [
    timed('fold', () => histories.map((history) => foldBatch(PLAN, history))),
    timed('evaluate, no release known', () => fresh().map((batch) => evaluateBatch(batch, NOW_AT))),
    timed('evaluate, releases known', () => kept.map((batch) => evaluateBatch(batch, NOW_AT))),
    timed('bench view', () => benchView(entries, NOW_AT)),
  ];
  for (const { name, medianMs } of timings) console.info(`  ${name}: ${medianMs.toFixed(1)} ms`);
  return timings;
}
