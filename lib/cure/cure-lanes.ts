import type { TemperatureCourse } from '@/lib/cure/course';
import { CureIndex } from '@/lib/cure/cure-index';
import { type CureLaw, laneRate } from '@/lib/cure/lane-rate';

/** The equivalent age of one sheet along the three lanes of one course. */
export interface CureLanes {
  readonly course: TemperatureCourse;
  readonly slow: CureIndex;
  readonly central: CureIndex;
  readonly fast: CureIndex;
}

/** Sums a course for one sheet on all three lanes. Costs one pass each; share the result between clocks. */
export function cureLanes(course: TemperatureCourse, law: CureLaw): CureLanes {
  return {
    course,
    slow: new CureIndex(course, 'slow', laneRate(law, 'slow')),
    central: new CureIndex(course, 'central', laneRate(law, 'central')),
    fast: new CureIndex(course, 'fast', laneRate(law, 'fast')),
  };
}

/**
 * A look-up of lanes that sums each different law once, however many mixes carry a copy of it: what a screen with
 * hundreds of clocks over one course uses.
 */
export function lanesOfCourse(course: TemperatureCourse): (law: CureLaw) => CureLanes {
  const known = new Map<string, CureLanes>();
  return (law) => {
    const key = JSON.stringify([law.referenceC, law.minCureC, law.rateLaw]);
    const lanes = known.get(key) ?? cureLanes(course, law);
    known.set(key, lanes);
    return lanes;
  };
}
