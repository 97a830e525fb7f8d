import fc from 'fast-check';
import type { CureReader } from '@/lib/batch/cure-reader';
import type { BatchEvent, BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import type { BatchPlan, PlannedOperation } from '@/lib/batch/plan';
import { OPERATION_KINDS, WAITS } from '@/lib/batch/plan';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import { HOUR_MS } from '@/lib/units/instant';
import { hoursOn, SLOW_EPOXY } from './workshop';

const { handle: _, ...WITHOUT_HANDLE } = SLOW_EPOXY.milestoneHours;
/** As printed, without handling, and with hours but no pot life. */
export const SHEETS: readonly AdhesiveSheet[] = [
  SLOW_EPOXY,
  { ...SLOW_EPOXY, milestoneHours: WITHOUT_HANDLE },
  { ...SLOW_EPOXY, potLife: [], recoatRemedy: 'scuff and wipe' },
];

const ANCHOR_IDS = ['tie', 'belly', 'tail'];
const MIX_IDS = ['m1', 'm2', 'm3', 'm4'];

/** Routes of one to six operations whose needs name earlier ones, on one to five pieces. */
export const planArbitrary: fc.Arbitrary<BatchPlan> = fc
  .record({
    quantity: fc.integer({ min: 1, max: 5 }),
    drafts: fc.array(
      fc.record({
        kind: fc.constantFrom(...OPERATION_KINDS),
        anchors: fc.integer({ min: 0, max: 3 }),
        needs: fc.array(fc.tuple(fc.nat(5), fc.constantFrom(...WAITS)), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ quantity, drafts }) => ({
    quantity,
    anchors: ANCHOR_IDS.map((id) => ({ id, name: id })),
    operations: drafts.map(
      ({ kind, anchors, needs }, index): PlannedOperation => ({
        id: `op${index}`,
        name: `op${index}`,
        kind,
        attendedMinutes: 1,
        materialId: null,
        anchorIds: kind === 'glue' ? ANCHOR_IDS.slice(0, anchors) : [],
        needs: index === 0 ? [] : needs.map(([back, wait]) => ({ operationId: `op${back % index}`, wait })),
      }),
    ),
  }));

const pieceNumber = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 1, max: 5 }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -3, 6, 2.5, Number.NaN, 1e9, Number.POSITIVE_INFINITY) },
);
const pieces = fc.array(pieceNumber, { maxLength: 6 });
const operationId = fc.oneof(
  { weight: 9, arbitrary: fc.nat(5).map((index) => `op${index}`) },
  { weight: 1, arbitrary: fc.constantFrom('nowhere', '', '__proto__', 'constructor') },
);
const mixId = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom(...MIX_IDS) },
  { weight: 1, arbitrary: fc.constantFrom('m9', '', '__proto__', 'm1@0') },
);
const figure = fc.oneof(
  { weight: 9, arbitrary: fc.double({ min: 0.5, max: 40, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e300, 1e-300) },
);
const atArbitrary = fc.oneof(
  { weight: 19, arbitrary: fc.integer({ min: -2, max: 400 }).map((halves) => hoursOn(halves / 2)) },
  { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Number.NEGATIVE_INFINITY, 9e15, -9e15, 0.5) },
);

/** Anything a client could have sent that is not a correction or an opening, sense or nonsense. */
export const correctableBody: fc.Arbitrary<CorrectableBody> = fc.oneof(
  fc.record({ kind: fc.constant('work-done' as const), operationId, pieces }),
  fc.record({
    kind: fc.constant('mix-started' as const),
    mixId,
    number: fc.integer({ min: 1, max: 9 }),
    operationId,
    materialId: fc.constant('slow'),
    materialName: fc.constant('Slow epoxy'),
    sheet: fc.constantFrom(...SHEETS),
    massG: figure,
    temperatureC: figure,
    lotIds: fc.constant([]),
  }),
  fc.record({
    kind: fc.constant('joints-set' as const),
    mixId,
    joints: fc.array(fc.record({ piece: pieceNumber, anchorId: fc.constantFrom(...ANCHOR_IDS, 'none') }), {
      maxLength: 6,
    }),
  }),
  fc.record({ kind: fc.constant('mix-closed' as const), mixId }),
  fc.record({ kind: fc.constant('coat-applied' as const), mixId, pieces }),
  fc.record({ kind: fc.constant('window-remedied' as const), operationId, pieces }),
  fc.record({ kind: fc.constant('pieces-scrapped' as const), pieces, reason: fc.constant('split') }),
  fc.record({ kind: fc.constant('mix-quarantined' as const), mixId, reason: fc.constant('reads low') }),
  fc.record({
    kind: fc.constant('pieces-cleared' as const),
    mixId,
    pieces,
    how: fc.constantFrom('tested' as const, 'redone' as const),
    note: fc.constant(''),
  }),
  fc.record({ kind: fc.constant('noted' as const), text: fc.string({ maxLength: 5 }), pieces }),
  fc.constant({ kind: 'batch-finished' as const }),
  fc.constant({ kind: 'batch-reopened' as const }),
);

const anyBody: fc.Arbitrary<BatchEventBody> = fc.oneof(
  { weight: 12, arbitrary: correctableBody },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('batch-opened' as const), quantity: fc.integer({ min: 0, max: 9 }) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('corrected' as const),
      seq: fc.integer({ min: -1, max: 30 }),
      reason: fc.constant('slip'),
      replacement: fc.option(fc.record({ at: atArbitrary, body: correctableBody })),
    }),
  },
);

/** A history numbered from 1 without holes, mostly opened at the start; whatever comes in it. */
export function eventsArbitrary(plan: BatchPlan): fc.Arbitrary<BatchEvent[]> {
  return fc
    .record({
      opened: fc.boolean(),
      entries: fc.array(fc.record({ at: atArbitrary, body: anyBody, person: fc.constantFrom('ana', 'ben', null) }), {
        maxLength: 30,
      }),
    })
    .map(({ opened, entries }) => {
      const opening = {
        at: hoursOn(0),
        body: { kind: 'batch-opened', quantity: plan.quantity },
        person: 'ana',
      } as const;
      return [...(opened ? [opening] : []), ...entries].map(({ at, body, person }, index) => ({
        seq: index + 1,
        key: `key-${index + 1}`,
        at,
        recordedAt: at,
        personId: person,
        body,
      }));
    });
}

/** A plan with a history of it. */
export const planAndEvents: fc.Arbitrary<{ readonly plan: BatchPlan; readonly events: BatchEvent[] }> =
  planArbitrary.chain((plan) => eventsArbitrary(plan).map((events) => ({ plan, events })));

export { atArbitrary };

/**
 * A shop in which the sheet's hours hold at 25 degC, from a tenth less to a third more; plain enough that thousands of
 * histories can be tried. The table tests go through the real cure.
 */
export const PLAIN_CURE: CureReader = {
  release({ sheet, setAt, mixedAt }, milestone) {
    const hours = sheet.milestoneHours[milestone];
    if (hours === undefined || !MILESTONES.includes(milestone)) return { ok: false, code: 'not-on-sheet' };
    const startAt = milestone === 'recoat-by' ? mixedAt : setAt;
    const after = (factor: number) => Math.round(startAt + hours * factor * HOUR_MS);
    return { ok: true, band: { earliestAt: after(0.9), centralAt: after(1), latestAt: after(4 / 3) } };
  },
};

/** How many histories a property is tried on. */
export const RUNS = process.env.SOAK === '1' ? 20_000 : 300;
