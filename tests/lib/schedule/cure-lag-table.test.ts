import { expect, it, test } from 'vitest';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { CourseSettings } from '@/lib/cure/course';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { NO_READINGS, readingSeries } from '@/lib/cure/reading-series';
import { release } from '@/lib/cure/release';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { closesAt, compileProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { CURE_TABLE_STEP_MINUTES, cureLagTable } from '@/lib/schedule/cure-lag-table';
import { closingMinute, type LagTable, lagTableFault, openingMinute } from '@/lib/schedule/lag';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { sheet } from '../cure/make-course';
import { smallShop, smallTask } from './small-shop';

const DAY = 1440;
const EPOCH = Date.UTC(2026, 2, 27);
const DAYS = 12;

/** A lag table as the planner looks it up. */
function compiledLag(table: LagTable) {
  const task = smallTask('task', 1, { readyAfter: { kind: 'table', tableId: table.id } });
  const lag = compileProblem(smallShop([], [task], { lagTables: [table] })).readyAfter[0];
  if (lag === undefined) throw new Error('the table is not compiled');
  return lag;
}

const COURSES = process.env.SOAK === '1' ? 400 : 24;

test(`in ${COURSES} odd shops no opening is told too early and no closing too late, at any minute`, () => {
  const late: number[] = [];
  const early: number[] = [];
  for (let seed = 1; seed <= COURSES; seed++) {
    const random = seededRandom(seed);
    const between = (low: number, high: number) => low + random() * (high - low);
    const night = between(2, 18);
    const settings: CourseSettings = {
      zone: random() < 0.5 ? 'Europe/Berlin' : 'UTC',
      profile: {
        otherwiseC: night,
        periods: [
          { weekdays: [1, 3, 5, 6, 7], fromMinute: 8 * 60, toMinute: 22 * 60, temperatureC: night + between(0, 16) },
        ],
      },
      profileToleranceC: between(0, 3),
      sensorToleranceC: 0.5,
      floorC: 0,
      ceilingC: 32,
    };
    // Half of the shops have a log with holes over the first two days.
    const log = Array.from({ length: 96 }, (_, i) => EPOCH + i * 30 * MINUTE_MS).filter(() => random() < 0.7);
    const degrees = log.map((at) => night + 5 + 4 * Math.sin(at / (4 * HOUR_MS)));
    const readings = random() < 0.5 ? NO_READINGS : readingSeries(log, degrees);
    const course = temperatureCourse(readings, settings, EPOCH, EPOCH + DAYS * DAY * MINUTE_MS);
    const hours = between(1, 40);
    const own: AdhesiveSheet = sheet({
      minCureC: between(-5, 12),
      milestoneHours: { handle: hours, 'recoat-from': hours, 'recoat-by': hours + between(1, 40) },
      ...(random() < 0.3 ? { recoatCapHours: between(5, 60) } : {}),
    });
    const lanes = cureLanes(course, own);
    const [from, to] = [2 * 60, 7 * DAY];
    const opening = cureLagTable('opening', own, lanes, 'recoat-from', EPOCH, from, to);
    const closing = cureLagTable('closing', own, lanes, 'recoat-by', EPOCH, from, to);
    if (opening === null || closing === null) throw new Error('the sheet states both');
    expect([lagTableFault(opening), lagTableFault(closing)], `seed ${seed}`).toEqual([null, null]);
    const [opens, closes] = [compiledLag(opening), compiledLag(closing)];
    for (let k = 0; k < 60; k++) {
      const minute = Math.floor(between(from, to));
      const at = EPOCH + minute * MINUTE_MS;
      const clock = { setAt: at, mixedAt: at, sheet: own };
      const label = `seed ${seed}, minute ${minute}`;
      const exact = release(clock, lanes, 'recoat-from');
      const opened = openingMinute(opening, minute);
      expect(opensAt(opens, minute), label).toBe(opened ?? NEVER);
      if (exact.kind === 'release' && opened !== null) {
        const byMinutes = opened - (exact.latestAt - EPOCH) / MINUTE_MS;
        expect(byMinutes, label).toBeGreaterThanOrEqual(0);
        late.push(byMinutes);
      } else if (exact.kind === 'beyond-horizon') expect(opened, label).toBeNull();
      const window = release(clock, lanes, 'recoat-by');
      const closed = closingMinute(closing, minute);
      expect(closesAt(closes, minute), label).toBe(closed ?? NEVER);
      if (window.kind !== 'release' || closed === null) throw new Error(`${label}: a window is always judged`);
      const byMinutes = (window.earliestAt - EPOCH) / MINUTE_MS - closed;
      expect(byMinutes, label).toBeGreaterThanOrEqual(0);
      early.push(byMinutes);
    }
  }
  console.log(
    `openings told late, on a grid of ${CURE_TABLE_STEP_MINUTES} min: ${spread(late)}; closings early: ${spread(early)}`,
  );
  expect(late.length + early.length).toBeGreaterThan(COURSES * 60);
});

/** How far the grid is off, in minutes. */
function spread(minutes: readonly number[]): string {
  const sorted = minutes.toSorted((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  return `${minutes.length} looked up, half within ${at(0.5)} min, 99 of 100 within ${at(0.99)}, worst ${at(1)}`;
}

it('a beginning that a hole in the log leaves unjudged is over with the next that is judged', () => {
  const settings: CourseSettings = {
    zone: 'UTC',
    profile: { otherwiseC: 20, periods: [] },
    profileToleranceC: 0,
    sensorToleranceC: 0,
    floorC: 20,
    ceilingC: 20,
  };
  const minutes = [0, 30, 60, 90, 600, 630, 660, 690, 720, 750, 780, 810, 840, 870];
  const log = readingSeries(
    minutes.map((minute) => EPOCH + minute * MINUTE_MS),
    minutes.map(() => 20),
  );
  const course = temperatureCourse(log, settings, EPOCH, EPOCH + 5 * DAY * MINUTE_MS);
  const own = sheet({ milestoneHours: { handle: 4 } });
  const lanes = cureLanes(course, own);
  const inHole = EPOCH + 120 * MINUTE_MS;
  expect(release({ setAt: inHole, mixedAt: inHole, sheet: own }, lanes, 'handle').kind).toBe('not-judged');
  const table = cureLagTable('handle', own, lanes, 'handle', EPOCH, 0, 2 * DAY);
  if (table === null) throw new Error('the sheet states it');
  expect(lagTableFault(table)).toBeNull();
  const ends = table.minutes.map((length, i) => (length === null ? null : i * CURE_TABLE_STEP_MINUTES + length));
  expect(openingMinute(table, 120)).toBe(ends.find((end) => end !== null && end > 600));
});

it('a window that began before the table is not taken to be open', () => {
  const table: LagTable = { id: 'window', startMinute: 600, stepMinutes: 30, minutes: [60, 60] };
  expect(closingMinute(table, 599)).toBe(599);
  expect(closesAt(compiledLag(table), 599)).toBe(599);
  expect(closingMinute(table, 600)).toBe(660);
  expect(closingMinute(table, 629)).toBe(660);
});
