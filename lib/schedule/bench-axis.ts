import type { BenchPerson, MinuteSpan } from '@/lib/schedule/planning-problem';

/** One session on the axis: `axisStart` to `axisEnd` there is `clockStart` to `clockEnd` in minutes of the problem. */
export interface AxisSession {
  readonly person: number;
  readonly axisStart: number;
  readonly axisEnd: number;
  readonly clockStart: number;
  readonly clockEnd: number;
}

/**
 * Everybody's sessions one after the other, person by person, so that nights take no minutes and nobody does two things
 * at a time where no two tasks overlap on the axis. What has passed at `fromMinute`, and sessions that begin at
 * `untilMinute` or later, are left out.
 */
export function benchAxis(
  people: readonly BenchPerson[],
  fromMinute: number,
  untilMinute: number,
): readonly AxisSession[] {
  const axis: AxisSession[] = [];
  let axisStart = 0;
  for (const [person, { sessions }] of people.entries()) {
    for (const { startMinute, endMinute } of sessions) {
      const clockStart = Math.max(fromMinute, startMinute);
      if (endMinute <= clockStart || startMinute >= untilMinute) continue;
      const axisEnd = axisStart + endMinute - clockStart;
      axis.push({ person, axisStart, axisEnd, clockStart, clockEnd: endMinute });
      axisStart = axisEnd;
    }
  }
  return axis;
}

/** The stretches of the axis that a person's stretch of the clock takes. */
export function spansOnAxis(
  axis: readonly AxisSession[],
  person: number,
  { startMinute, endMinute }: MinuteSpan,
): readonly MinuteSpan[] {
  return axis.flatMap((session) => {
    if (session.person !== person) return [];
    const start = Math.max(startMinute, session.clockStart);
    const end = Math.min(endMinute, session.clockEnd);
    const offset = session.axisStart - session.clockStart;
    return start < end ? [{ startMinute: start + offset, endMinute: end + offset }] : [];
  });
}
