import { COURSE_KINDS, type CourseKind, firstAfter, type TemperatureCourse } from '@/lib/cure/course';
import type { Instant } from '@/lib/units/instant';
import type { TimeRange } from './timeline-range';

/** One point of the temperature to draw. */
export interface CoursePoint {
  readonly at: Instant;
  readonly lowC: number;
  readonly centralC: number;
  readonly highC: number;
}

/** A run of points that rest on the same thing. */
export interface CourseRun {
  /** Readings and what is bridged between them, or the usual week of the shop. */
  readonly isRead: boolean;
  readonly points: readonly CoursePoint[];
}

const READ: ReadonlySet<CourseKind> = new Set(['reading', 'bridge', 'held']);
/** Columns the strip is cut into: more would be finer than a screen. Chosen. */
const COLUMNS = 480;

/**
 * The temperature of a stretch of time as runs of at most a few points a column: of each column the first, the
 * coldest and the warmest point are kept, so that a short cold spell is not lost.
 */
export function courseRuns(course: TemperatureCourse, { fromAt, toAt }: TimeRange): CourseRun[] {
  const columnMs = (toAt - fromAt) / COLUMNS;
  const end = Math.min(course.length, firstAfter(course.at, toAt, course.length) + 1);
  const runs: { isRead: boolean; points: CoursePoint[] }[] = [];
  let kept: Kept | null = null;
  for (let i = Math.max(0, firstAfter(course.at, fromAt, course.length) - 1); i < end; i++) {
    const point = pointAt(course, i);
    const isRead = READ.has(COURSE_KINDS[course.kinds[i] ?? 0] ?? 'reading');
    const column = Math.floor((point.at - fromAt) / columnMs);
    const run = runs.at(-1);
    if (run === undefined || run.isRead !== isRead) {
      // Runs touch: the new one begins where the old one ends.
      run?.points.push(point);
      runs.push({ isRead, points: [point] });
      kept = { column, coldestC: point.lowC, warmestC: point.highC };
      continue;
    }
    const next: Kept = withPoint(kept, column, point);
    if (next !== kept) run.points.push(point);
    kept = next;
  }
  return runs;
}

/** What is drawn of a column so far. */
interface Kept {
  readonly column: number;
  readonly coldestC: number;
  readonly warmestC: number;
}

/** The same object when the point adds nothing that would be seen. */
function withPoint(kept: Kept | null, column: number, { lowC, highC }: CoursePoint): Kept {
  if (kept === null || kept.column !== column) return { column, coldestC: lowC, warmestC: highC };
  if (lowC >= kept.coldestC && highC <= kept.warmestC) return kept;
  return { column, coldestC: Math.min(lowC, kept.coldestC), warmestC: Math.max(highC, kept.warmestC) };
}

function pointAt(course: TemperatureCourse, i: number): CoursePoint {
  return {
    at: course.at[i] ?? 0,
    lowC: course.lowC[i] ?? 0,
    centralC: course.centralC[i] ?? 0,
    highC: course.highC[i] ?? 0,
  };
}
