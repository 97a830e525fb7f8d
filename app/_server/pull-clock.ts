import 'server-only';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { TemperatureCourse } from '@/lib/cure/course';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { release } from '@/lib/cure/release';
import { type PullTiming, pullTiming } from '@/lib/pulltest/pull-release';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import type { PullSeries, SeriesMix, SeriesSpecimen } from '@/prisma/data/pull-series';
import type { ShopSettings } from '@/prisma/data/shop';
import { currentCourse } from './cure-course';

/** When a specimen's joint was mixed and set, with the sheet of that mix. */
interface PulledJoint {
  readonly sheet: AdhesiveSheet;
  readonly mixedAt: Instant;
  readonly setAt: Instant;
}

/** The cure clock of a joint at one moment. */
export interface PullClock {
  readonly timing: PullTiming;
  /** When it is sure to be cured enough to be pulled; the end of what can be foreseen where it is not sure by then. */
  readonly releasedAt: Instant | null;
  /** Equivalent hours at the sheet's reference temperature; null: not known. */
  readonly cureHours: number | null;
}

const NOT_JUDGED: PullClock = { timing: { kind: 'not-judged' }, releasedAt: null, cureHours: null };

/** The joint of a specimen; null where its hours or its sheet were not written down. */
function jointOf(mix: SeriesMix, specimen: SeriesSpecimen): PulledJoint | null {
  const setAt = specimen.setAt ?? mix.setAt ?? mix.mixedAt;
  if (mix.sheet === null || mix.mixedAt === null || setAt === null) return null;
  return { sheet: mix.sheet, mixedAt: mix.mixedAt, setAt };
}

/** Tells the clocks of a series' specimens at any moment; the temperature is loaded once. */
export async function pullClocks(
  reader: DbReader,
  shop: ShopSettings,
  series: Pick<PullSeries, 'mixes' | 'specimens'>,
  nowAt: Instant,
): Promise<(specimen: SeriesSpecimen, at: Instant) => PullClock> {
  const starts = series.mixes.flatMap(({ mixedAt }) => mixedAt ?? []);
  const { course } = await currentCourse(reader, shop, Math.min(nowAt, ...starts), nowAt);
  const mixes = new Map(series.mixes.map((mix) => [mix.id, mix]));
  const lanes = new Map<AdhesiveSheet, ReturnType<typeof cureLanes>>();
  return (specimen, at) => {
    const mix = mixes.get(specimen.mixId);
    const joint = mix === undefined ? null : jointOf(mix, specimen);
    if (joint === null) return NOT_JUDGED;
    try {
      const known = lanes.get(joint.sheet) ?? cureLanes(course, joint.sheet);
      lanes.set(joint.sheet, known);
      return clockAt(joint, known, course, at);
    } catch (error) {
      // A sheet or an hour that cannot be computed with judges nothing.
      if (error instanceof RangeError) return NOT_JUDGED;
      throw error;
    }
  };
}

function clockAt(
  joint: PulledJoint,
  lanes: ReturnType<typeof cureLanes>,
  course: TemperatureCourse,
  at: Instant,
): PullClock {
  const timing = pullTiming(at, release(joint, lanes, 'pull-test'));
  const cureHours = at >= joint.setAt && at <= course.endAt ? lanes.central.ageBetween(joint.setAt, at) : null;
  switch (timing.kind) {
    case 'cured':
      return { timing, releasedAt: timing.releasedAt, cureHours };
    case 'early':
      return { timing, releasedAt: timing.releasedAt ?? course.endAt, cureHours };
    case 'not-judged':
      return { timing, releasedAt: null, cureHours };
  }
}
