import { describe, expect, it, test } from 'vitest';
import { type Condition, conditionKey, conditionsOf, without } from '@/lib/schedule/condition';
import { firstPlan } from '@/lib/schedule/first-plan';
import { type Lift, lifted } from '@/lib/schedule/lift';
import { aloneProblem, PlaceJudge, routeTo } from '@/lib/schedule/place-judge';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { type SmallestReason, smallestReasons } from '@/lib/schedule/smallest-reason';
import { randomShop } from './random-shop';
import { at, follows, hoursOn, smallShop, smallTask, within } from './small-shop';

const DAYS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13];
const EVENINGS = hoursOn(DAYS, 18, 21);

/** The one reason of a shop, whose first lifts are tried on the shop as it is. */
function reasonOf(problem: PlanningProblem): SmallestReason {
  expect(problemFaults(problem)).toEqual([]);
  const reasons = smallestReasons(problem, firstPlan(problem));
  expect(reasons).toHaveLength(1);
  const [reason] = reasons;
  if (reason === undefined) throw new Error('no reason');
  return reason;
}

function kindsOf({ causes }: SmallestReason): string[][] {
  return causes.map(({ conditions }) => conditions.map(({ kind }) => kind).toSorted());
}

function lift<K extends Lift['kind']>(
  { causes }: SmallestReason,
  kind: K,
  cause = 0,
): Extract<Lift, { kind: K }> | undefined {
  return causes[cause]?.lifts.find((one): one is Extract<Lift, { kind: K }> => one.kind === kind);
}

describe('the smallest reason and what lifts it', () => {
  it('200 minutes in one go, sessions of 180: twenty minutes more, or two pieces', () => {
    const reason = reasonOf(smallShop(EVENINGS, [smallTask('shape', 200)]));
    expect(kindsOf(reason)).toEqual([['hours', 'one-go']]);
    expect(reason.isCertain).toBe(true);
    expect(reason.isLifted).toBe(true);
    const hours = lift(reason, 'hours');
    expect((hours?.endMinute ?? 0) - (hours?.startMinute ?? 0)).toBe(20);
    expect(hours?.extends).not.toBeNull();
    expect(lift(reason, 'put-down')).toMatchObject({ leastPieceMinutes: 180 });
    expect(lift(reason, 'shorter')).toMatchObject({ attendedMinutes: 180 });
  });

  it('a mix is not told to be put down, and its getting ready counts', () => {
    const mix = smallTask('glue', 175, { setUp: { key: 'epoxy', minutes: 10 } });
    const reason = reasonOf(smallShop(EVENINGS, [mix]));
    expect(kindsOf(reason)).toEqual([['hours', 'one-go']]);
    expect(lift(reason, 'put-down')).toBeUndefined();
    expect(lift(reason, 'shorter')).toMatchObject({ attendedMinutes: 170 });
  });

  it('a recoat window that opens and closes between two Saturdays', () => {
    const saturdays = hoursOn([5, 12], 9, 12);
    const links = [follows('coat 1', 'coat 2', 480), within('coat 1', 'coat 2', 26 * 60)];
    const problem = smallShop(saturdays, [smallTask('coat 1', 30), smallTask('coat 2', 30)], { links });
    const reason = reasonOf(problem);
    expect(reason.taskId).toBe('coat 2');
    expect(kindsOf(reason)).toEqual([['cure', 'hours', 'hours', 'window']]);
    expect(reason.isCertain).toBe(false);
    // Coat 1 as late as it can be: Saturday 11:30 to 12:00, coat 2 from 20:00 on; or a window of a week.
    expect(lift(reason, 'longer-window')?.minutes).toBe(at(12, 9, 30) - at(5, 11, 30) - 26 * 60);
    expect(lift(reason, 'cure-within')?.minutes).toBe(120);
    expect(lift(reason, 'remedy')).toBeDefined();
    expect(reason.isLifted).toBe(true);
  });

  it('a rotator of 18 places for 24 pieces', () => {
    const coat = smallTask('coat', 60, {
      holds: [{ resourceId: 'rotator', amount: 24, until: { kind: 'fixed', minutes: 600 } }],
    });
    const resources = [{ id: 'rotator', name: 'Rotator', capacity: 18, changes: [] }];
    const reason = reasonOf(smallShop(EVENINGS, [coat], { resources }));
    expect(kindsOf(reason)).toEqual([['hold']]);
    expect(reason.isCertain).toBe(true);
    expect(lift(reason, 'places')?.places).toBe(6);
    expect(lift(reason, 'fewer-places')?.amount).toBe(18);
    expect(lift(reason, 'open-longer')).toBeUndefined();
  });

  it('a booth by day only, and evenings only', () => {
    const paint = smallTask('paint', 40, {
      holds: [{ resourceId: 'booth', amount: 1, until: { kind: 'fixed', minutes: 0 } }],
    });
    const changes = DAYS.flatMap((day) => [
      { fromMinute: at(day, 8), capacity: 1 },
      { fromMinute: at(day, 17), capacity: 0 },
    ]);
    const resources = [{ id: 'booth', name: 'Booth', capacity: 0, changes }];
    const reason = reasonOf(smallShop(EVENINGS, [paint], { resources }));
    expect(kindsOf(reason)).toEqual([['hold', 'hours']]);
    expect(reason.isCertain).toBe(true);
    // The booth until 18:40, or Ann from 16:20 on.
    expect(lift(reason, 'open-longer')?.minutes).toBe(100);
    const hours = lift(reason, 'hours');
    expect((hours?.endMinute ?? 0) - (hours?.startMinute ?? 0)).toBe(100);
    expect(lift(reason, 'places')).toBeUndefined();
  });

  it('the only one who can do it is away', () => {
    const people = [
      { id: 'ann', name: 'Ann', skills: [], sessions: EVENINGS },
      { id: 'bob', name: 'Bob', skills: ['paint'], sessions: [] },
    ];
    const paint = smallTask('paint', 40, { by: { kind: 'skill', skill: 'paint' } });
    const reason = reasonOf(smallShop([], [paint], { people }));
    expect(kindsOf(reason)).toEqual([['hours', 'who']]);
    expect(reason.isCertain).toBe(true);
    expect(lift(reason, 'anyone')).toBeDefined();
    expect(lift(reason, 'hours')).toMatchObject({ personId: 'bob', extends: null });
  });

  it('nobody has the skill', () => {
    const turning = smallTask('turn', 40, { by: { kind: 'skill', skill: 'turning' } });
    const reason = reasonOf(smallShop(EVENINGS, [turning]));
    expect(kindsOf(reason)).toEqual([['who']]);
    expect(lift(reason, 'anyone')).toBeDefined();
  });

  it('a cure that the cold never lets end', () => {
    const never = { id: 'never', startMinute: 0, stepMinutes: 1, minutes: [null] };
    const cure = { ...follows('glue', 'sand'), lag: { kind: 'table', tableId: 'never' } } as const;
    const problem = smallShop(EVENINGS, [smallTask('glue', 20), smallTask('sand', 30)], {
      links: [cure],
      lagTables: [never],
    });
    const reason = reasonOf(problem);
    expect(kindsOf(reason)).toEqual([['cure']]);
    expect(reason.isCertain).toBe(true);
    // From the first evening, 18:20, to the last one, 20:30.
    expect(lift(reason, 'cure-within')?.minutes).toBe(at(13, 20, 30) - at(0, 18, 20));
  });

  it('a place that a pinned task takes all the time', () => {
    const pinned = smallTask('old coat', 30, {
      holds: [{ resourceId: 'rack', amount: 4, until: { kind: 'fixed', minutes: 20_000 } }],
      state: { kind: 'pinned', startMinute: at(0, 18), personId: 'ann' },
    });
    const coat = smallTask('coat', 30, {
      holds: [{ resourceId: 'rack', amount: 2, until: { kind: 'fixed', minutes: 600 } }],
    });
    const resources = [{ id: 'rack', name: 'Rack', capacity: 4, changes: [] }];
    const reason = reasonOf(smallShop(EVENINGS, [pinned, coat], { resources, nowMinute: at(0, 18) }));
    expect(kindsOf(reason)).toEqual([['fixed', 'hold']]);
    expect(reason.isCertain).toBe(true);
    expect(lift(reason, 'unpin')).toMatchObject({ taskId: 'old coat' });
    expect(lift(reason, 'places')?.places).toBe(2);
  });

  it('a glue that comes too late, and by when it would have to come', () => {
    const glue = smallTask('glue', 30, { releaseMinute: at(13, 20, 40) });
    const reason = reasonOf(smallShop(EVENINGS, [glue]));
    expect(kindsOf(reason)).toEqual([['hours', 'release']]);
    expect(lift(reason, 'release')?.minute).toBe(at(13, 20, 30));
  });

  it('two reasons together: the rack is too small and the session too short', () => {
    const coat = smallTask('coat', 200, {
      setUp: { key: 'epoxy', minutes: 5 },
      holds: [{ resourceId: 'rack', amount: 6, until: { kind: 'fixed', minutes: 0 } }],
    });
    const resources = [{ id: 'rack', name: 'Rack', capacity: 4, changes: [] }];
    const reason = reasonOf(smallShop(EVENINGS, [coat], { resources }));
    expect(kindsOf(reason).toSorted()).toEqual([['hold'], ['hours', 'one-go']]);
    expect(reason.isLifted).toBe(true);
  });

  it('a pin before the cure it waits for', () => {
    const sand = smallTask('sand', 30, { state: { kind: 'pinned', startMinute: at(0, 19), personId: 'ann' } });
    const problem = smallShop(EVENINGS, [smallTask('glue', 20), sand], { links: [follows('glue', 'sand', 1440)] });
    const reason = reasonOf(problem);
    expect(reason.taskId).toBe('sand');
    expect(kindsOf(reason)).toEqual([['cure']]);
    expect(lift(reason, 'pin-at')?.minute).toBe(at(1, 18, 20));
    expect(lift(reason, 'unpin')).toBeDefined();
  });

  it('a bench that is full: which batch to leave out, or how much more', () => {
    const [evening] = hoursOn([0], 18, 21);
    const batches = ['batch', 'other'].map((id) => ({ id, name: id, releaseMinute: 0, dueMinute: null, weight: 1 }));
    const tasks = [smallTask('shape', 100), smallTask('other shape', 100, { batchId: 'other' })];
    const reason = reasonOf(smallShop(evening === undefined ? [] : [evening], tasks, { batches }));
    expect(kindsOf(reason)).toEqual([['hours', 'other-work']]);
    expect(reason.isCertain).toBe(false);
    expect(lift(reason, 'leave-out')).toBeDefined();
    const hours = lift(reason, 'hours');
    expect((hours?.endMinute ?? 0) - (hours?.startMinute ?? 0)).toBe(20);
  });
});

it('a lift that helps only with nothing else to do is told as such', () => {
  const batches = ['batch', 'other'].map((id) => ({ id, name: id, releaseMinute: 0, dueMinute: null, weight: 1 }));
  const coat = smallTask('coat', 100, {
    holds: [{ resourceId: 'rack', amount: 6, until: { kind: 'fixed', minutes: 0 } }],
  });
  const resources = [{ id: 'rack', name: 'Rack', capacity: 4, changes: [] }];
  const tasks = [coat, smallTask('other shape', 100, { batchId: 'other' })];
  const alone = reasonOf(smallShop(hoursOn([0], 18, 21), tasks, { batches, resources }));
  expect(kindsOf(alone)).toEqual([['hold']]);
  expect([alone.isLifted, alone.isOnlyAlone]).toEqual([true, true]);
  const roomy = reasonOf(smallShop(hoursOn([0, 1], 18, 21), tasks, { batches, resources }));
  expect([roomy.isLifted, roomy.isOnlyAlone]).toEqual([true, false]);
});

const SHOPS = process.env.SOAK === '1' ? 2_000 : 16;

test(`in ${SHOPS} odd shops the set is least, and the lifts lift`, () => {
  const count = { reasons: 0, full: 0, lifted: 0, onlyAlone: 0, certain: 0, sets: 0, conditions: 0, lifts: 0 };
  for (let seed = 1; seed <= SHOPS; seed++) {
    const problem = randomShop(seed);
    const plan = firstPlan(problem);
    const reasons = smallestReasons(problem, plan, 100_000);
    for (const reason of reasons) {
      const { taskId, causes } = reason;
      const label = `seed ${seed} ${taskId}`;
      const route = routeTo(problem, taskId);
      const isFull = causes.some(({ conditions }) => conditions.some(({ kind }) => kind === 'other-work'));
      count.reasons++;
      if (reason.isCertain) count.certain++;
      if (reason.isOnlyAlone) count.onlyAlone++;
      if (reason.isLifted && !reason.isOnlyAlone) {
        // Beside the rest of the plan each lift of the last cause gives it a place.
        const own = new Set(route.map(({ id }) => id));
        const rest = plan.placed
          .toSorted((a, b) => a.startMinute - b.startMinute || a.finishMinute - b.finishMinute)
          .flatMap((place) => (own.has(place.taskId) ? [] : [place.taskId]));
        const among = new PlaceJudge(taskId, { left: Number.POSITIVE_INFINITY }, rest);
        const before = causes.slice(0, -1).flatMap(({ lifts }) => lifts.slice(0, 1));
        for (const one of causes.at(-1)?.lifts ?? []) {
          const together = [...before, one];
          const letGo = together.flatMap((other) => (other.kind === 'unpin' ? [other.taskId] : []));
          expect(among.planWithPlace(together.reduce(lifted, problem), letGo), label).not.toBeNull();
        }
      }
      if (isFull) {
        count.full++;
        continue;
      }
      const judge = new PlaceJudge(taskId, { left: Number.POSITIVE_INFINITY });
      let shop = aloneProblem(problem, route);
      for (const { conditions, lifts } of causes) {
        const all = conditionsOf(shop, route);
        const only = (kept: readonly Condition[]) => {
          const keys = new Set(kept.map(conditionKey));
          return without(
            shop,
            all.filter((one) => !keys.has(conditionKey(one))),
          );
        };
        expect(judge.planWithPlace(only(conditions)), label).toBeNull();
        for (const one of conditions) {
          expect(judge.planWithPlace(only(conditions.filter((other) => other !== one))), label).not.toBeNull();
        }
        count.sets++;
        count.conditions += conditions.length;
        count.lifts += lifts.length;
        const isLast = causes.at(-1)?.conditions === conditions;
        for (const one of lifts) {
          expect(problemFaults(lifted(shop, one)), label).toEqual([]);
          if (isLast && reason.isLifted) expect(judge.planWithPlace(lifted(shop, one)), label).not.toBeNull();
        }
        const [first] = lifts;
        if (first !== undefined) shop = lifted(shop, first);
      }
      if (reason.isLifted) count.lifted++;
    }
  }
  console.log(`${SHOPS} shops: ${JSON.stringify(count)}`);
  expect(count.lifted).toBeGreaterThan(0.6 * count.reasons);
});

test('a budget of passes is kept, and the same shop has the same reasons', () => {
  for (let seed = 1; seed <= 4; seed++) {
    const problem = randomShop(seed);
    const plan = firstPlan(problem);
    expect(smallestReasons(problem, plan)).toEqual(smallestReasons(problem, plan));
    expect(smallestReasons(problem, plan, 40).length).toBeLessThanOrEqual(smallestReasons(problem, plan).length);
  }
});
