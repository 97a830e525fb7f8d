import { expect, test } from 'vitest';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { MINUTE_MS } from '@/lib/units/instant';
import { addDays, weekdayOf } from '@/lib/units/zoned-time';
import { clockChangeShop, type GivenHours } from './clock-change-shop';

const SHOPS = process.env.SOAK === '1' ? 2_000 : 60;

test(`${SHOPS} shops over a change of the clocks: the visits keep the hours as the clock on the wall shows them`, () => {
  let minutes = 0;
  let visits = 0;
  for (let seed = 1; seed <= SHOPS; seed++) {
    const { problem, zone, hours } = clockChangeShop(seed);
    expect(problemFaults(problem), `seed ${seed}`).toEqual([]);
    const improver = new PlanImprover(problem, null, seed);
    improver.improve(20);
    const clock = wallClock(zone);
    for (const plan of [firstPlan(problem), improver.best()]) {
      const wrong = checkPlan(problem, plan).filter((violation) => !isGivenViolation(problem, violation));
      expect(wrong, `seed ${seed}`).toEqual([]);
      const open = new Set(problem.tasks.filter(({ state }) => state.kind === 'open').map(({ id }) => id));
      for (const { taskId, personId, pieces } of plan.placed) {
        const given = hours.get(personId ?? '');
        if (!open.has(taskId) || given === undefined) continue;
        visits++;
        for (const piece of pieces) {
          for (let minute = piece.startMinute; minute < piece.endMinute; minute += 13) {
            const shown = clock(problem.epochAt + minute * MINUTE_MS);
            expect(isWithin(given, shown), `seed ${seed}, ${taskId} at ${shown.day} ${shown.minute}`).toBe(true);
            minutes++;
          }
        }
      }
    }
  }
  console.log(`${SHOPS} shops, ${visits} visits, ${minutes} minutes looked up`);
  expect(visits).toBeGreaterThan(SHOPS);
});

interface WallMinute {
  readonly day: string;
  readonly minute: number;
}

/** Day and minute that the runtime's own calendar shows: nothing of it is ours. */
function wallClock(zone: string): (at: number) => WallMinute {
  const format = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'short' });
  return (at) => {
    const [day = '', time = ''] = format.format(at).split(' ');
    const [hour = '0', minute = '0'] = time.split(':');
    return { day, minute: Number(hour) * 60 + Number(minute) };
  };
}

function isWithin(given: GivenHours, { day, minute }: WallMinute): boolean {
  return isOfDay(given, addDays(day, -1), minute + 1440) || isOfDay(given, day, minute);
}

/** Whether a minute, counted from the midnight at which a day begins, lies in hours that begin on it. */
function isOfDay({ weekly, exceptions }: GivenHours, day: string, minute: number): boolean {
  const holds = (hours: { readonly fromMinute: number; readonly toMinute: number } | null) =>
    hours !== null &&
    minute >= hours.fromMinute &&
    minute < (hours.toMinute <= hours.fromMinute ? hours.toMinute + 1440 : hours.toMinute);
  const ofDay = (wanted: string) => exceptions.filter(({ onDate, effect }) => onDate === day && effect === wanted);
  const [own, within, beside] = [ofDay('instead'), ofDay('within'), ofDay('beside')];
  if (own.some(({ hours }) => holds(hours)) || beside.some(({ hours }) => holds(hours))) return true;
  const isUsual = weekly.some((hours) => hours.weekday === weekdayOf(day) && holds(hours));
  return own.length === 0 && isUsual && (within.length === 0 || within.some(({ hours }) => holds(hours)));
}
