import { checkPlan } from '@/lib/schedule/check-plan';
import { closingMinute, type Lag } from '@/lib/schedule/lag';
import { planValue } from '@/lib/schedule/plan-value';
import type { Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';
import { seededRandom } from '@/lib/statistics/seeded-random';

/**
 * A shop so small that all its plans can be looked at one by one: three visits of two batches, one or two short
 * evenings of one or two people, with cures by table, a resource, set-ups and windows.
 */
export function tinyShop(seed: number): PlanningProblem {
  const random = seededRandom(seed);
  const int = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const chance = (share: number) => random() < share;
  const cure = (): Lag => (chance(0.6) ? { kind: 'table', tableId: 'cure' } : { kind: 'fixed', minutes: int(0, 6) });
  const tasks = [0, 1, 2].map((i): Task => {
    const setUp = chance(0.6) ? { key: 'glue', minutes: int(1, 3) } : null;
    const by = chance(0.8) ? ({ kind: 'anyone' } as const) : ({ kind: 'skill', skill: 'paint' } as const);
    return {
      id: `t${i}`,
      batchId: i < 2 ? 'a' : 'b',
      name: `t${i}`,
      attendedMinutes: int(2, 5),
      by,
      leastPieceMinutes: null,
      setUp,
      releaseMinute: chance(0.2) ? int(0, 8) : 0,
      holds: chance(0.7) ? [{ resourceId: 'rack', amount: int(1, 2), until: cure() }] : [],
      readyAfter: chance(0.5) ? cure() : { kind: 'fixed', minutes: 0 },
      state: { kind: 'open' },
    };
  });
  const ends = { fromTaskId: 't0', toTaskId: 't1', to: 'start' } as const;
  const links: Link[] = [{ id: 'after', kind: 'least', from: 'finish', lag: cure(), ...ends }];
  if (chance(0.7)) {
    const remedy = chance(0.8) ? { minutes: int(1, 3), words: 'sand' } : null;
    links.push({
      id: 'window',
      kind: 'greatest',
      from: 'start',
      lag: { kind: 'fixed', minutes: int(4, 14) },
      remedy,
      ...ends,
    });
  }
  let end = 0;
  const minutes = Array.from({ length: 20 }, (_, i) => {
    end = Math.max(end, i * 4 + int(1, 9));
    return end - i * 4;
  });
  const second = int(16, 22);
  const sessions = [
    { startMinute: 0, endMinute: int(8, 11) },
    { startMinute: second, endMinute: second + int(8, 11) },
  ];
  const other = { id: 'q', name: 'q', skills: [], sessions: [{ startMinute: 2, endMinute: int(7, 9) }] };
  return {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: 40,
    batches: [
      { id: 'a', name: 'a', releaseMinute: 0, dueMinute: int(4, 16), weight: int(1, 3) },
      { id: 'b', name: 'b', releaseMinute: 0, dueMinute: int(2, 8), weight: chance(0.3) ? 0.5 : int(1, 3) },
    ],
    tasks,
    links,
    people: [{ id: 'p', name: 'p', skills: ['paint'], sessions }, ...(chance(0.4) ? [other] : [])],
    resources: [
      { id: 'rack', name: 'rack', capacity: 2, changes: chance(0.3) ? [{ fromMinute: int(3, 20), capacity: 1 }] : [] },
    ],
    lagTables: [{ id: 'cure', startMinute: 0, stepMinutes: 4, minutes }],
  };
}

/** The plans of a tiny shop that are the least and the most late; null: none places every task. */
export function leastAndMostLate(
  problem: PlanningProblem,
): { readonly least: ShopPlan; readonly most: ShopPlan } | null {
  let least: { plan: ShopPlan; late: number } | null = null;
  let most: { plan: ShopPlan; late: number } | null = null;
  const choices = problem.people.flatMap((person) =>
    person.sessions.flatMap(({ startMinute, endMinute }) =>
      Array.from({ length: endMinute - startMinute }, (_, i) => ({
        personId: person.id,
        startMinute: startMinute + i,
      })),
    ),
  );
  for (const first of choices) {
    for (const second of choices) {
      if (second.startMinute <= first.startMinute) continue;
      for (const third of choices) {
        const plan = planAt(problem, [first, second, third]);
        const late = planValue(problem, plan).weightedLateMinutes;
        const isOfUse = least === null || most === null || late < least.late || late > most.late;
        if (!isOfUse || checkPlan(problem, plan).length > 0) continue;
        if (least === null || late < least.late) least = { plan, late };
        if (most === null || late > most.late) most = { plan, late };
      }
    }
  }
  return least === null || most === null ? null : { least: least.plan, most: most.plan };
}

/** Everything that follows from when and by whom each task is begun. */
function planAt(
  { tasks, links, people, lagTables }: PlanningProblem,
  begun: readonly { readonly personId: string; readonly startMinute: number }[],
): ShopPlan {
  const starts = new Map(tasks.map(({ id }, i) => [id, begun[i]?.startMinute ?? 0]));
  const placed = tasks.map((task, i): PlannedTask => {
    const { personId = '', startMinute = 0 } = begun[i] ?? {};
    const session = people
      .find(({ id }) => id === personId)
      ?.sessions.find((one) => one.startMinute <= startMinute && startMinute < one.endMinute);
    const isReady = tasks.some((other, k) => {
      const { personId: otherId, startMinute: at = -1 } = begun[k] ?? {};
      const isBefore = otherId === personId && at >= (session?.startMinute ?? 0) && at < startMinute;
      return isBefore && other.setUp?.key === task.setUp?.key;
    });
    const setUpMinutes = isReady ? 0 : (task.setUp?.minutes ?? 0);
    const missed = links.filter((link) => {
      if (link.kind !== 'greatest' || link.remedy === null || link.toTaskId !== task.id) return false;
      const from = starts.get(link.fromTaskId) ?? 0;
      const table = lagTables.find(({ id }) => link.lag.kind === 'table' && id === link.lag.tableId);
      const closes = link.lag.kind === 'fixed' ? from + link.lag.minutes : table && closingMinute(table, from);
      return closes !== undefined && closes !== null && startMinute > closes;
    });
    const added = missed.reduce((sum, link) => sum + (link.kind === 'greatest' ? (link.remedy?.minutes ?? 0) : 0), 0);
    const finishMinute = startMinute + task.attendedMinutes + setUpMinutes + added;
    return {
      taskId: task.id,
      personId,
      startMinute,
      finishMinute,
      pieces: [{ startMinute, endMinute: finishMinute }],
      setUpMinutes,
      remedyLinkIds: missed.map(({ id }) => id),
    };
  });
  return { placed, unplaced: [] };
}
