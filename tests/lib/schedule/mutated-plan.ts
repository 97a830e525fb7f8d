import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';

/** One planted fault: the plan with it, and the kinds of violation of which at least one has to be found. */
export interface Mutation {
  readonly what: string;
  readonly plan: ShopPlan;
}

type Pick = <T>(list: readonly T[]) => T | undefined;

/** Plants one fault into a plan that holds; null where the plan has nothing that the fault could be planted on. */
export function plantFault(problem: PlanningProblem, plan: ShopPlan, random: () => number): Mutation | null {
  const pick: Pick = (list) => list[Math.floor(random() * list.length)];
  const faults = [
    dropped,
    doubled,
    stranger,
    nobody,
    shortened,
    outsideHours,
    broughtForward,
    onTopOfAnother,
    beyondHorizon,
    setUpDropped,
    remedyInvented,
    beforeItsCure,
    movedFixed,
    crowded,
  ];
  return pick(faults)?.(problem, plan, pick) ?? null;
}

function swapped(plan: ShopPlan, place: PlannedTask, by: PlannedTask): ShopPlan {
  return { ...plan, placed: plan.placed.map((one) => (one === place ? by : one)) };
}

/** The same visit at another time. */
function shifted(place: PlannedTask, by: number): PlannedTask {
  return {
    ...place,
    startMinute: place.startMinute + by,
    finishMinute: place.finishMinute + by,
    pieces: place.pieces.map((piece) => ({ startMinute: piece.startMinute + by, endMinute: piece.endMinute + by })),
  };
}

function toCome(problem: PlanningProblem, plan: ShopPlan): readonly PlannedTask[] {
  const open = new Set(problem.tasks.filter(({ state }) => state.kind === 'open').map(({ id }) => id));
  return plan.placed.filter(({ taskId }) => open.has(taskId));
}

function attended(problem: PlanningProblem, plan: ShopPlan): readonly PlannedTask[] {
  return toCome(problem, plan).filter(({ pieces }) => pieces.length > 0);
}

function dropped(_problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(plan.placed);
  if (place === undefined) return null;
  return { what: 'a task left out', plan: { ...plan, placed: plan.placed.filter((one) => one !== place) } };
}

function doubled(_problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(plan.placed);
  return place === undefined
    ? null
    : { what: 'a task placed twice', plan: { ...plan, placed: [...plan.placed, place] } };
}

function stranger(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  if (place === undefined) return null;
  return { what: 'a person nobody knows', plan: swapped(plan, place, { ...place, personId: 'nobody known' }) };
}

function nobody(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  if (place === undefined) return null;
  return { what: 'no person', plan: swapped(plan, place, { ...place, personId: null }) };
}

function shortened(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const last = place?.pieces.at(-1);
  if (place === undefined || last === undefined) return null;
  const pieces = [...place.pieces.slice(0, -1), { ...last, endMinute: last.endMinute - 1 }];
  const by = { ...place, pieces, finishMinute: last.endMinute - 1 };
  return { what: 'a minute too short', plan: swapped(plan, place, by) };
}

function outsideHours(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const person = problem.people.find(({ id }) => id === place?.personId);
  const session = person?.sessions.find(
    ({ startMinute, endMinute }) =>
      place !== undefined && startMinute <= place.startMinute && place.startMinute < endMinute,
  );
  if (place === undefined || session === undefined) return null;
  return {
    what: 'begun before the session',
    plan: swapped(plan, place, shifted(place, session.startMinute - 1 - place.startMinute)),
  };
}

function broughtForward(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(toCome(problem, plan));
  const task = problem.tasks.find(({ id }) => id === place?.taskId);
  if (place === undefined || task === undefined) return null;
  const release = Math.max(problem.nowMinute, task.releaseMinute);
  return { what: 'before it may begin', plan: swapped(plan, place, shifted(place, release - 1 - place.startMinute)) };
}

function onTopOfAnother(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const other = pick(attended(problem, plan).filter((one) => one !== place && one.personId === place?.personId));
  if (place === undefined || other === undefined) return null;
  return {
    what: 'two things at once',
    plan: swapped(plan, place, shifted(place, other.startMinute - place.startMinute)),
  };
}

function beyondHorizon(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(toCome(problem, plan));
  if (place === undefined) return null;
  const by = problem.horizonMinute + 1 - place.finishMinute;
  return { what: 'after the horizon', plan: swapped(plan, place, shifted(place, by)) };
}

function setUpDropped(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan).filter(({ setUpMinutes }) => setUpMinutes > 0));
  const piece = place?.pieces[0];
  if (place === undefined || piece === undefined) return null;
  // A second payer that comes later does not help the first one.
  const startMinute = piece.startMinute + place.setUpMinutes;
  const by = { ...place, startMinute, setUpMinutes: 0, pieces: [{ ...piece, startMinute }] };
  const isShared = plan.placed.some(
    (one) => one !== place && one.personId === place.personId && one.startMinute < startMinute,
  );
  return isShared ? null : { what: 'a set-up not paid', plan: swapped(plan, place, by) };
}

function remedyInvented(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(toCome(problem, plan));
  if (place === undefined) return null;
  const by = { ...place, remedyLinkIds: [...place.remedyLinkIds, 'no such window'] };
  return { what: 'a remedy of nothing', plan: swapped(plan, place, by) };
}

function beforeItsCure(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const open = new Map(toCome(problem, plan).map((place) => [place.taskId, place]));
  const fits = problem.links.filter(
    (link) => link.kind === 'least' && link.lag.kind === 'fixed' && link.lag.minutes >= 0 && open.has(link.toTaskId),
  );
  const link = pick(fits);
  const place = open.get(link?.toTaskId ?? '');
  const from = plan.placed.find(({ taskId }) => taskId === link?.fromTaskId);
  if (link?.lag.kind !== 'fixed' || place === undefined || from === undefined) return null;
  const opens = (link.from === 'start' ? from.startMinute : from.finishMinute) + link.lag.minutes;
  const now = link.to === 'start' ? place.startMinute : place.finishMinute;
  return { what: 'a minute before its cure', plan: swapped(plan, place, shifted(place, opens - 1 - now)) };
}

function movedFixed(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const fixed = new Set(problem.tasks.filter(({ state }) => state.kind !== 'open').map(({ id }) => id));
  const place = pick(plan.placed.filter(({ taskId }) => fixed.has(taskId)));
  return place === undefined ? null : { what: 'history or a pin moved', plan: swapped(plan, place, shifted(place, 1)) };
}

/** All that hold one resource begin when the first does: found as soon as together they ask for too much. */
function crowded(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const resource = pick(problem.resources);
  if (resource === undefined) return null;
  const amounts = new Map(
    problem.tasks.map((task) => [task.id, task.holds.find(({ resourceId }) => resourceId === resource.id)]),
  );
  const holders = toCome(problem, plan).filter(({ taskId, startMinute, finishMinute }) => {
    const hold = amounts.get(taskId);
    if (hold === undefined || hold.amount === 0) return false;
    return finishMinute > startMinute || hold.until.kind === 'table' || hold.until.minutes > 0;
  });
  const most = Math.max(resource.capacity, ...resource.changes.map(({ capacity }) => capacity));
  const asked = holders.reduce((sum, { taskId }) => sum + (amounts.get(taskId)?.amount ?? 0), 0);
  const first = holders[0];
  if (first === undefined || asked <= most) return null;
  const placed = plan.placed.map((place) =>
    holders.includes(place) ? shifted(place, first.startMinute - place.startMinute) : place,
  );
  return { what: 'too much held at once', plan: { ...plan, placed } };
}
