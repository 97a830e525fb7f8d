import type { BenchPerson, MinuteSpan } from '@/lib/schedule/planning-problem';

/** One session on the axis: `axisStart` to `axisEnd` there is `clockStart` to `clockEnd` on the clock, in slots. */
export interface AxisSession {
  readonly person: number;
  readonly axisStart: number;
  readonly axisEnd: number;
  readonly clockStart: number;
  readonly clockEnd: number;
}

/** Minutes as slots: slot 0 begins at `originMinute`, and each lasts `slotMinutes`. */
export interface SlotGrid {
  readonly originMinute: number;
  readonly slotMinutes: number;
}

/** The first slot that begins at a minute or later. */
export function slotFrom({ originMinute, slotMinutes }: SlotGrid, minute: number): number {
  return Math.ceil((minute - originMinute) / slotMinutes);
}

/** The last slot that begins at a minute or before. */
export function slotUntil({ originMinute, slotMinutes }: SlotGrid, minute: number): number {
  return Math.floor((minute - originMinute) / slotMinutes);
}

/** The minute at which a slot begins. */
export function minuteOfSlot({ originMinute, slotMinutes }: SlotGrid, slot: number): number {
  return originMinute + slot * slotMinutes;
}

/**
 * Everybody's sessions one after the other, person by person, so that nights take no slots and nobody does two things
 * at a time where no two tasks overlap on the axis. What has passed at the origin, and what begins at `untilMinute` or
 * later, is left out; a session that is no whole number of slots loses the rest.
 */
export function benchAxis(people: readonly BenchPerson[], grid: SlotGrid, untilMinute: number): readonly AxisSession[] {
  const axis: AxisSession[] = [];
  let axisStart = 0;
  for (const [person, { sessions }] of people.entries()) {
    for (const { startMinute, endMinute } of sessions) {
      const clockStart = Math.max(0, slotFrom(grid, startMinute));
      const clockEnd = slotUntil(grid, endMinute);
      if (clockEnd <= clockStart || startMinute >= untilMinute) continue;
      const axisEnd = axisStart + clockEnd - clockStart;
      axis.push({ person, axisStart, axisEnd, clockStart, clockEnd });
      axisStart = axisEnd;
    }
  }
  return axis;
}

/** The stretches of the axis that a person's stretch of the clock takes, in slots; whole slots, also where it takes a part. */
export function spansOnAxis(
  axis: readonly AxisSession[],
  grid: SlotGrid,
  person: number,
  { startMinute, endMinute }: MinuteSpan,
): readonly MinuteSpan[] {
  const from = slotUntil(grid, startMinute);
  const to = slotFrom(grid, endMinute);
  return axis.flatMap((session) => {
    if (session.person !== person) return [];
    const start = Math.max(from, session.clockStart);
    const end = Math.min(to, session.clockEnd);
    const offset = session.axisStart - session.clockStart;
    return start < end ? [{ startMinute: start + offset, endMinute: end + offset }] : [];
  });
}
