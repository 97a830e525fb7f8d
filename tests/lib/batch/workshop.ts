import type { BatchState } from '@/lib/batch/batch-state';
import type { CureReader } from '@/lib/batch/cure-reader';
import { courseReader } from '@/lib/batch/cure-reader';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEvent, BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan } from '@/lib/batch/plan';
import { releaseBook } from '@/lib/batch/release-book';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { lanesOfCourse } from '@/lib/cure/cure-lanes';
import { NO_READINGS } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';

/** An invented workshop whose figures can be followed by hand. */

/** Thursday 2026-02-12 18:00 in Chicago. */
export const EVENING_AT: Instant = Date.UTC(2026, 1, 13, 0, 0);

/** `hours` after that evening. */
export function hoursOn(hours: number): Instant {
  return EVENING_AT + Math.round(hours * HOUR_MS);
}

/** 30 min at 100 g and 25 degC as in the worked example of pack section 3.3; hours at 25 degC. */
export const SLOW_EPOXY: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' }],
  milestoneHours: { handle: 6, sand: 24, 'recoat-from': 4, 'recoat-by': 24, paint: 48, 'pull-test': 168 },
  maxMassG: 150,
  sources: {},
};

/** Set anchors, clear coat twice, sand, paint. */
export const PLAN: BatchPlan = {
  quantity: 4,
  anchors: [
    { id: 'tie', name: 'Line tie' },
    { id: 'belly', name: 'Belly hanger' },
  ],
  operations: [
    operation('drill', 'work', []),
    { ...operation('set', 'glue', [['drill', 'done']]), anchorIds: ['tie', 'belly'], materialId: 'slow' },
    { ...operation('coat-1', 'coat', [['set', 'handle']]), materialId: 'slow' },
    { ...operation('coat-2', 'coat', [['coat-1', 'recoat']]), materialId: 'slow' },
    operation('sand', 'work', [['coat-2', 'sand']]),
    operation('paint', 'work', [
      ['sand', 'done'],
      ['coat-2', 'paint'],
    ]),
  ],
};

function operation(
  id: string,
  kind: 'work' | 'glue' | 'coat',
  needs: readonly (readonly [string, BatchPlan['operations'][number]['needs'][number]['wait']])[],
): BatchPlan['operations'][number] {
  return {
    id,
    name: id,
    kind,
    attendedMinutes: 2,
    materialId: null,
    anchorIds: [],
    needs: needs.map(([operationId, wait]) => ({ operationId, wait })),
  };
}

/** Events of a batch one after the other, each with its hours after the evening. */
export function history(...entries: readonly (readonly [hours: number, body: BatchEventBody])[]): BatchEvent[] {
  return entries.map(([hours, body], index) => eventOf(index + 1, hoursOn(hours), body));
}

export function eventOf(seq: number, at: Instant, body: BatchEventBody, personId: string | null = 'ana'): BatchEvent {
  return { seq, key: `key-${seq}`, at, recordedAt: at, personId, body };
}

export const OPENED: BatchEventBody = { kind: 'batch-opened', quantity: 4 };

export function work(operationId: string, ...pieces: readonly number[]): CorrectableBody {
  return { kind: 'work-done', operationId, pieces };
}

/** 9 g at 22 degC: by the pack a pot life of 60.84 min, between 40.70 and 102.61. */
export function mix(mixId: string, operationId = 'set', number = 1): Extract<BatchEventBody, { kind: 'mix-started' }> {
  return {
    kind: 'mix-started',
    mixId,
    number,
    operationId,
    materialId: 'slow',
    materialName: 'Slow epoxy',
    sheet: SLOW_EPOXY,
    massG: 9,
    temperatureC: 22,
    lotIds: [],
  };
}

/** Both anchors of each piece. */
export function joints(mixId: string, ...pieces: readonly number[]): CorrectableBody {
  return {
    kind: 'joints-set',
    mixId,
    joints: pieces.flatMap((piece) => ['tie', 'belly'].map((anchorId) => ({ piece, anchorId }))),
  };
}

export function coat(mixId: string, ...pieces: readonly number[]): CorrectableBody {
  return { kind: 'coat-applied', mixId, pieces };
}

export function correct(seq: number): BatchEventBody {
  return { kind: 'corrected', seq, reason: 'slip', replacement: null };
}

/** A shop held at one temperature without any doubt about it, from a week before the evening to 60 days after. */
export function shopAt(temperatureC: number): CureReader {
  const settings = {
    zone: 'America/Chicago',
    profile: { otherwiseC: temperatureC, periods: [] },
    profileToleranceC: 0,
    sensorToleranceC: 0,
    floorC: temperatureC,
    ceilingC: temperatureC,
  };
  return courseReader(lanesOfCourse(temperatureCourse(NO_READINGS, settings, hoursOn(-168), hoursOn(1440))));
}

/** A batch folded from its events, in a shop held at a temperature. */
export function batchOf(events: readonly BatchEvent[], temperatureC = 15, plan = PLAN): KnownBatch {
  return { plan, state: foldBatch(plan, events), releases: releaseBook(shopAt(temperatureC)) };
}

/** What a history says, without the history itself. */
export function factsOf({ history: _, lastSeq: __, ...facts }: BatchState): Omit<BatchState, 'history' | 'lastSeq'> {
  return facts;
}
