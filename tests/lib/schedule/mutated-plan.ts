import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { beforeItsCure, beforeItsTable, remedyDropped, remedyInvented, windowMissed } from './link-faults';
import { attended, type Mutation, type Pick, shifted, swapped, toCome } from './plan-edits';

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
    unskilled,
    away,
    acrossTheBreak,
    windowMissed,
    beforeItsTable,
    split,
    remedyDropped,
    placedAndUnplaced,
    pinOfAnother,
    longer,
  ];
  return pick(faults)?.(problem, plan, pick) ?? null;
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

/** Done by somebody who does not have the skill, or is not the one asked for. */
function unskilled(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const place = pick(attended(problem, plan).filter(({ taskId }) => tasks.get(taskId)?.by.kind !== 'anyone'));
  const by = tasks.get(place?.taskId ?? '')?.by;
  const other = pick(
    problem.people.filter(({ id, skills }) =>
      by?.kind === 'skill' ? !skills.includes(by.skill) : by?.kind === 'person' && id !== by.personId,
    ),
  );
  if (place === undefined || other === undefined) return null;
  return { what: 'a person without the skill', plan: swapped(plan, place, { ...place, personId: other.id }) };
}

/** Begun as the person goes home. */
function away(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const session = problem.people
    .find(({ id }) => id === place?.personId)
    ?.sessions.findLast(({ startMinute }) => place !== undefined && startMinute <= place.startMinute);
  if (place === undefined || session === undefined) return null;
  const by = shifted(place, session.endMinute - place.startMinute);
  return { what: 'a person who is away', plan: swapped(plan, place, by) };
}

/** The last minute of the visit falls after the session. */
function acrossTheBreak(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const session = problem.people
    .find(({ id }) => id === place?.personId)
    ?.sessions.find(({ endMinute }) => place !== undefined && place.finishMinute <= endMinute);
  if (place === undefined || session === undefined) return null;
  const by = shifted(place, session.endMinute + 1 - place.finishMinute);
  return { what: 'a minute after hours', plan: swapped(plan, place, by) };
}

/** Put down for a minute although it is to be done in one go. */
function split(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const whole = new Set(problem.tasks.filter((task) => task.leastPieceMinutes === null).map(({ id }) => id));
  const place = pick(
    attended(problem, plan).filter(({ taskId, pieces }) => {
      const piece = pieces[0];
      return whole.has(taskId) && piece !== undefined && piece.endMinute - piece.startMinute >= 2;
    }),
  );
  const piece = place?.pieces[0];
  if (place === undefined || piece === undefined) return null;
  const middle = piece.startMinute + 1;
  const pieces = [
    { startMinute: piece.startMinute, endMinute: middle },
    { startMinute: middle + 1, endMinute: piece.endMinute + 1 },
  ];
  const by = { ...place, pieces, finishMinute: piece.endMinute + 1 };
  return { what: 'put down in between', plan: swapped(plan, place, by) };
}

function placedAndUnplaced(_problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const taskId = pick(plan.placed)?.taskId;
  if (taskId === undefined) return null;
  const unplaced = [...plan.unplaced, { taskId, reason: { kind: 'no-room-before-horizon' } as const }];
  return { what: 'placed and yet without a place', plan: { ...plan, unplaced } };
}

function pinOfAnother(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const named = new Set(
    problem.tasks.filter(({ state }) => state.kind !== 'open' && state.personId !== null).map(({ id }) => id),
  );
  const place = pick(plan.placed.filter(({ taskId }) => named.has(taskId)));
  const other = pick(problem.people.filter(({ id }) => id !== place?.personId));
  if (place === undefined || other === undefined) return null;
  return { what: 'given to another', plan: swapped(plan, place, { ...place, personId: other.id }) };
}

function longer(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(attended(problem, plan));
  const last = place?.pieces.at(-1);
  if (place === undefined || last === undefined) return null;
  const pieces = [...place.pieces.slice(0, -1), { ...last, endMinute: last.endMinute + 1 }];
  const by = { ...place, pieces, finishMinute: last.endMinute + 1 };
  return { what: 'a minute too long', plan: swapped(plan, place, by) };
}
