import type { BenchPerson, Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';
import type { TaskPlace } from '@/lib/schedule/task-place';
import type { Violation } from '@/lib/schedule/violation';

type Places = ReadonlyMap<string, TaskPlace>;

/** Who, within which hours, in how many pieces, how long, one thing at a time, and set-ups paid. */
export function attendanceViolations(problem: PlanningProblem, places: Places): readonly Violation[] {
  const people = new Map(problem.people.map((person) => [person.id, person]));
  const links = new Map(problem.links.map((link) => [link.id, link]));
  const violations: Violation[] = [];
  for (const { task, place } of places.values()) {
    if (task.state.kind === 'done' || task.state.kind === 'under-way') continue;
    violations.push(...ownViolations(task, place, place.personId === null ? undefined : people.get(place.personId)));
    violations.push(...lengthViolations(task, place, links));
  }
  for (const person of problem.people) {
    const own = [...places.values()].filter(({ place }) => place.personId === person.id);
    violations.push(...overlaps(person, own), ...missingSetUps(person, own));
  }
  return violations;
}

function ownViolations(task: Task, place: PlannedTask, person: BenchPerson | undefined): readonly Violation[] {
  const taskIds = [task.id];
  const { pieces, personId } = place;
  if (pieces.length === 0) return [];
  if (person === undefined || !mayAttend(task, person)) return [{ kind: 'wrong-person', taskIds, personId }];
  const violations: Violation[] = [];
  for (const piece of pieces) {
    const inside = person.sessions.some((s) => s.startMinute <= piece.startMinute && piece.endMinute <= s.endMinute);
    if (!inside) violations.push({ kind: 'outside-bench-hours', taskIds, atMinute: piece.startMinute });
  }
  const least = task.leastPieceMinutes;
  const isShort = pieces.slice(0, -1).some((piece) => piece.endMinute - piece.startMinute < (least ?? 0));
  const isOutOfOrder = pieces.some((piece, i) => i > 0 && piece.startMinute < (pieces[i - 1]?.endMinute ?? 0));
  if ((least === null && pieces.length > 1) || isShort || isOutOfOrder) violations.push({ kind: 'put-down', taskIds });
  return violations;
}

function mayAttend(task: Task, person: BenchPerson): boolean {
  switch (task.by.kind) {
    case 'anyone':
      return true;
    case 'skill':
      return person.skills.includes(task.by.skill);
    case 'person':
      return person.id === task.by.personId;
  }
}

function lengthViolations(task: Task, place: PlannedTask, links: ReadonlyMap<string, Link>): readonly Violation[] {
  const { pieces, setUpMinutes, startMinute, finishMinute } = place;
  let neededMinutes = task.attendedMinutes + setUpMinutes;
  for (const id of place.remedyLinkIds) {
    const link = links.get(id);
    if (link?.kind === 'greatest') neededMinutes += link.remedy?.minutes ?? 0;
  }
  const plannedMinutes = pieces.reduce((sum, piece) => sum + piece.endMinute - piece.startMinute, 0);
  const isWhole = pieces.every((piece) => piece.endMinute > piece.startMinute);
  const starts = (pieces[0]?.startMinute ?? startMinute) === startMinute;
  const ends = (pieces.at(-1)?.endMinute ?? startMinute) === finishMinute;
  const setUp = task.setUp?.minutes ?? 0;
  const paysAllOrNothing = setUpMinutes === 0 || setUpMinutes === setUp;
  if (plannedMinutes === neededMinutes && isWhole && starts && ends && paysAllOrNothing) return [];
  return [{ kind: 'wrong-length', taskIds: [task.id], neededMinutes, plannedMinutes }];
}

function overlaps(person: BenchPerson, own: readonly TaskPlace[]): readonly Violation[] {
  const pieces = own
    .filter(({ task }) => task.state.kind !== 'done')
    .flatMap(({ task, place }) => place.pieces.map((piece) => ({ ...piece, taskId: task.id })))
    .sort((a, b) => a.startMinute - b.startMinute || a.endMinute - b.endMinute);
  const violations: Violation[] = [];
  let latest = pieces[0];
  for (const piece of pieces.slice(1)) {
    if (latest !== undefined && piece.startMinute < latest.endMinute) {
      const taskIds = [latest.taskId, piece.taskId];
      violations.push({ kind: 'person-twice', taskIds, personId: person.id, atMinute: piece.startMinute });
    }
    if (latest === undefined || piece.endMinute > latest.endMinute) latest = piece;
  }
  return violations;
}

/** Of the tasks of one key in one session, the earliest that is not history alone has to pay unless history came first. */
function missingSetUps(person: BenchPerson, own: readonly TaskPlace[]): readonly Violation[] {
  const violations: Violation[] = [];
  for (const session of person.sessions) {
    const inSession = own
      .filter(({ task, place }) => {
        const { startMinute } = place;
        return task.setUp !== null && startMinute >= session.startMinute && startMinute < session.endMinute;
      })
      .sort((a, b) => a.place.startMinute - b.place.startMinute);
    const ready = new Set<string>();
    for (const { task, place } of inSession) {
      if (task.setUp === null) continue;
      const isHistory = task.state.kind === 'done' || task.state.kind === 'under-way';
      const pays = place.setUpMinutes === task.setUp.minutes;
      if (!isHistory && !pays && !ready.has(task.setUp.key))
        violations.push({ kind: 'set-up-missing', taskIds: [task.id] });
      ready.add(task.setUp.key);
    }
  }
  return violations;
}
