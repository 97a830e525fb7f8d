import { courseReader } from '@/lib/batch/cure-reader';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { KnownBatch, StageGroup } from '@/lib/batch/evaluation';
import type { BatchEvent } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan } from '@/lib/batch/plan';
import { releaseBook } from '@/lib/batch/release-book';
import { lanesOfCourse } from '@/lib/cure/cure-lanes';
import { readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { anchorId, type DemoBatch, operationId } from '@/prisma/seed/demo/batch-story';
import { demoBatches } from '@/prisma/seed/demo/demo-batches';
import { DEMO_MODELS } from '@/prisma/seed/demo/demo-models';
import { DEMO_PROFILE, demoReadings } from '@/prisma/seed/demo/demo-temperature';
import { demoTimes } from '@/prisma/seed/demo/demo-times';

export const DEMO_ZONE = 'America/Chicago';

/** The demo as the app would read it when it was loaded at `nowAt`, without a database; readings up to an instant. */
export function demoAt(nowAt: Instant, readingsUntilAt: Instant = nowAt) {
  const times = demoTimes(nowAt, DEMO_ZONE);
  const readings = demoReadings(times).filter(({ at }) => at <= readingsUntilAt);
  const course = temperatureCourse(
    readingSeries(
      readings.map(({ at }) => at),
      readings.map(({ temperatureC }) => temperatureC),
    ),
    { zone: DEMO_ZONE, profile: DEMO_PROFILE, profileToleranceC: 2, sensorToleranceC: 0.5, floorC: 4, ceilingC: 26 },
    nowAt - 20 * 24 * HOUR_MS,
    nowAt + 40 * 24 * HOUR_MS,
  );
  const reader = courseReader(lanesOfCourse(course));
  const batches = new Map(demoBatches(times).map((batch) => [batch.number, batch]));
  /** A batch after its first `count` events. */
  const known = (batch: DemoBatch, events: readonly BatchEvent[] = batch.events): KnownBatch => {
    const plan = planOf(batch);
    return { plan, state: foldBatch(plan, events), releases: releaseBook(reader) };
  };
  const groupsOf = (number: number): readonly StageGroup[] => {
    const batch = batches.get(number);
    return batch === undefined ? [] : evaluateBatch(known(batch), nowAt).groups;
  };
  return { times, readings, batches: [...batches.values()], known, groupsOf };
}

function planOf(batch: DemoBatch): BatchPlan {
  const revision = DEMO_MODELS.flatMap((model) => model.revisions).find(({ id }) => id === batch.revisionId);
  if (revision === undefined) throw new Error(`no revision ${batch.revisionId}`);
  return {
    quantity: batch.quantity,
    anchors: revision.anchors.map(({ key, name }) => ({ id: anchorId(revision, key), name })),
    operations: revision.route.map(({ key, name, kind, attendedMinutes, materialId, needs }) => ({
      id: operationId(revision, key),
      name,
      kind,
      attendedMinutes,
      materialId,
      anchorIds: kind === 'glue' ? revision.anchors.map((anchor) => anchorId(revision, anchor.key)) : [],
      needs: needs.map(([after, wait]) => ({ operationId: operationId(revision, after), wait })),
    })),
  };
}
