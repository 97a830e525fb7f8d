import type { BenchHoursInput } from '@/lib/contracts/bench-hours';
import { type Db, writeTx } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SaveBenchHoursResult = Done | Refusal<'no-person' | 'overlap'>;

/** Replaces the weekly bench hours of a person. Stretches of one day may not overlap. */
export async function saveBenchHours(
  database: Db,
  personId: string,
  { stretches }: BenchHoursInput,
): Promise<SaveBenchHoursResult> {
  const overlap = firstOverlap(stretches);
  if (overlap !== null) {
    const message = 'This stretch overlaps another one of the same day.';
    return { ok: false, code: 'overlap', message, field: `stretches.${overlap}.from` };
  }
  return writeTx(database, async (tx): Promise<SaveBenchHoursResult> => {
    const person = await tx.person.findUnique({ where: { id: personId }, select: { id: true } });
    if (person === null) return { ok: false, code: 'no-person', message: 'This person is not in the list any more.' };
    await tx.benchHours.deleteMany({ where: { personId } });
    await tx.benchHours.createMany({
      data: stretches.flatMap(({ weekdays, from, to }) =>
        weekdays.map((weekday) => ({ personId, weekday, fromMinute: from, toMinute: to })),
      ),
    });
    return DONE;
  });
}

const WEEK_MINUTES = 7 * 1440;

/** Index of the first stretch that overlaps an earlier one of the list, or null. Nights reach into the next day. */
function firstOverlap(stretches: BenchHoursInput['stretches']): number | null {
  const taken: { start: number; end: number }[] = [];
  for (const [index, { weekdays, from, to }] of stretches.entries()) {
    for (const weekday of weekdays) {
      const start = (weekday - 1) * 1440 + from;
      const end = (weekday - 1) * 1440 + (to <= from ? to + 1440 : to);
      // A Sunday night goes on in the Monday with which the week begins.
      const spans = [0, WEEK_MINUTES, -WEEK_MINUTES].map((shift) => ({ start: start + shift, end: end + shift }));
      if (spans.some((span) => taken.some((other) => span.start < other.end && other.start < span.end))) return index;
      taken.push({ start, end });
    }
  }
  return null;
}
