import { benchSessions, type DayException } from '@/lib/schedule/bench-sessions';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { MINUTE_MS } from '@/lib/units/instant';
import type { WeeklyHours } from '@/lib/units/weekly-hours';
import { addDays, type CalendarDay, WEEKDAYS } from '@/lib/units/zoned-time';
import { randomShop } from './random-shop';

interface ClockChange {
  readonly zone: string;
  readonly onDate: CalendarDay;
}

/** Sunday nights in which the clocks change. Source: the IANA time zone database, 2026. */
const CHANGES: readonly [ClockChange, ...ClockChange[]] = [
  { zone: 'Europe/Berlin', onDate: '2026-03-29' },
  { zone: 'Europe/Berlin', onDate: '2026-10-25' },
  { zone: 'America/New_York', onDate: '2026-03-08' },
  { zone: 'America/New_York', onDate: '2026-11-01' },
  // Half an hour, and spring in October.
  { zone: 'Australia/Lord_Howe', onDate: '2026-04-05' },
  { zone: 'Australia/Lord_Howe', onDate: '2026-10-04' },
];

/** Someone's hours as they were given, to be held against what was planned. */
export interface GivenHours {
  readonly weekly: readonly WeeklyHours[];
  readonly exceptions: readonly DayException[];
}

/** An odd shop over a night with a clock change, with evenings, nights over midnight, days away and other hours. */
export function clockChangeShop(seed: number): {
  readonly problem: PlanningProblem;
  readonly zone: string;
  readonly hours: ReadonlyMap<string, GivenHours>;
} {
  const random = seededRandom(seed * 31 + 7);
  const pick = <T>(list: readonly [T, ...T[]]): T => list[Math.floor(random() * list.length)] ?? list[0];
  const shop = randomShop(seed);
  const { zone, onDate } = pick(CHANGES);
  const epochAt = Date.parse(`${addDays(onDate, -3)}T00:00:00Z`) + Math.floor(random() * 1440) * MINUTE_MS;
  const hours = new Map<string, GivenHours>();
  const people = shop.people.map((person) => {
    const weekly = WEEKDAYS.flatMap((weekday): WeeklyHours[] => {
      if (random() < 0.3) return [];
      const fromMinute = pick([540, 1080, 1140, 1320]);
      // Over midnight: to a minute that no change of the clocks makes double or swallows.
      const toMinute = fromMinute === 1320 ? pick([30, 210, 240]) : fromMinute + pick([60, 180, 239]);
      return [{ weekday, fromMinute, toMinute }];
    });
    const exceptions = Array.from({ length: Math.floor(random() * 6) }, (_, i): DayException => {
      const hoursThen = random() < 0.6 ? null : { fromMinute: 600, toMinute: 600 + pick([45, 240]) };
      const day = addDays(onDate, i * 2 - 3);
      return { onDate: day, effect: pick(['instead', 'instead', 'within', 'beside']), hours: hoursThen };
    });
    hours.set(person.id, { weekly, exceptions });
    const endAt = epochAt + shop.horizonMinute * MINUTE_MS;
    return { ...person, sessions: benchSessions(weekly, exceptions, zone, epochAt, epochAt, endAt) };
  });
  return { problem: { ...shop, epochAt, people }, zone, hours };
}
