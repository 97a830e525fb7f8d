import type { Condition } from '@/lib/schedule/condition';
import { attendants } from '@/lib/schedule/condition';
import type { MinuteSpan, Task } from '@/lib/schedule/planning-problem';
import type { Cause, SmallestReason } from '@/lib/schedule/smallest-reason';
import { dateText, weekdayClockText } from '@/lib/units/format-instant';
import { MINUTE_MS } from '@/lib/units/instant';
import { liftSentence } from './lift-words';
import { minutesText, visitLabel } from './plan-words';
import type { ShopProblem } from './shop-problem';

/** Why something cannot be planned, or a pin not kept, as the smallest reason that was found. */
export function reasonSentence(reason: SmallestReason, shop: ShopProblem): string {
  const isPin = taskOf(shop, reason.taskId)?.state.kind === 'pinned';
  const cannot = isPin ? 'Cannot be kept where it is pinned' : 'Cannot be planned';
  const none = isPin ? 'No plan was found that keeps the pin' : 'No place was found';
  const causes = reason.causes.map((cause) => causeText(cause, reason.taskId, shop));
  return `${reason.isCertain ? cannot : none}: ${causes.join('. Besides, ')}.`;
}

/** What would lift it: the least change of each kind, tried one at a time. Several causes have to be lifted together. */
export function liftSentences({ causes, isLifted, isOnlyAlone }: SmallestReason, shop: ShopProblem): string[] {
  const sentences = liftsOf(causes, isLifted, shop);
  return isOnlyAlone ? [...sentences, 'The rest of the plan would still be in its way.'] : sentences;
}

function liftsOf(causes: readonly Cause[], isLifted: boolean, shop: ShopProblem): string[] {
  const [only] = causes;
  if (causes.length === 1 && only !== undefined) {
    if (only.lifts.length === 0) return ['No single change was found that would do.'];
    return only.lifts.slice(0, MOST_LIFTS).map((lift) => `${capital(liftSentence(lift, shop))} would do.`);
  }
  const firsts = causes.flatMap(({ lifts }) => lifts.slice(0, 1));
  const together = firsts.map((lift) => liftSentence(lift, shop)).join(', and ');
  if (!isLifted || firsts.length < causes.length) {
    return firsts.length === 0 ? [] : [`It takes at least ${together}, and more.`];
  }
  return [`Together it takes ${together}.`];
}

/** More are not read. Chosen. */
const MOST_LIFTS = 4;

function causeText({ conditions }: Cause, taskId: string, shop: ShopProblem): string {
  const has = (kind: Condition['kind']) => conditions.some((one) => one.kind === kind);
  const windows = conditions.flatMap((one) => (one.kind === 'window' ? [windowText(one.linkId, shop)] : []));
  const isFull = has('other-work');
  const holds = isFull ? [] : conditions.flatMap((one) => (one.kind === 'hold' ? [one] : []));
  const isAway = has('hours') && !has('who') && !isFull;
  const clauses = [
    ...(isFull ? [fullText(conditions, shop)] : []),
    ...(windows.length > 0 || isFull ? [] : conditions.flatMap((one) => cureText(one, conditions, shop))),
    ...conditions.flatMap((one) => fixedText(one, shop)),
    ...conditions.flatMap((one) => releaseText(one, shop)),
    ...(has('who') ? [whoText(conditions, shop)] : []),
    ...(isAway ? [] : holds.map((hold) => holdText(hold, conditions, shop))),
    ...(isAway ? [hoursText(conditions, taskId, holds, windows, shop)] : []),
    ...(isAway || windows.length === 0 ? [] : [`${windows.join(' and ')} closes before`]),
  ];
  return clauses.join('; ');
}

function taskOf({ problem }: ShopProblem, taskId: string): Task | undefined {
  return problem.tasks.find(({ id }) => id === taskId);
}

function fullText(conditions: readonly Condition[], { problem }: ShopProblem): string {
  const resources = conditions.flatMap((one) => (one.kind === 'hold' ? [one.resourceId] : []));
  const names = [...new Set(resources)].map((id) => problem.resources.find((one) => one.id === id)?.name ?? 'a place');
  const where = names.length === 0 ? 'the bench' : names.join(' and ');
  return `${where} is full with everything else for the weeks in view`;
}

function windowText(linkId: string, { problem, about }: ShopProblem): string {
  const link = problem.links.find(({ id }) => id === linkId);
  return `the recoat window of ${visitLabel(about.get(link?.fromTaskId ?? ''))}`;
}

function cureText(
  condition: Condition,
  conditions: readonly Condition[],
  { problem, about }: ShopProblem,
): readonly string[] {
  if (condition.kind !== 'cure') return [];
  const link = problem.links.find(({ id }) => id === condition.linkId);
  const from = visitLabel(about.get(link?.fromTaskId ?? ''));
  // Beside other conditions it only is too long for them.
  if (conditions.length > 1 || hasEnd(link?.lag, problem)) return [`it has to wait for ${from}`];
  return [
    `the cure of ${from} is not reached within the weeks in view, since the shop is too cold for it or its data sheet gives no hours`,
  ];
}

function hasEnd(
  lag: ShopProblem['problem']['links'][number]['lag'] | undefined,
  { lagTables }: ShopProblem['problem'],
): boolean {
  if (lag === undefined || lag.kind === 'fixed') return true;
  return lagTables.find(({ id }) => id === lag.tableId)?.minutes.some((minutes) => minutes !== null) ?? false;
}

function holdText(
  { taskId, resourceId }: Extract<Condition, { kind: 'hold' }>,
  conditions: readonly Condition[],
  shop: ShopProblem,
): string {
  const resource = shop.problem.resources.find(({ id }) => id === resourceId);
  const name = resource?.name ?? 'what holds it';
  const amount = taskOf(shop, taskId)?.holds.find((hold) => hold.resourceId === resourceId)?.amount ?? 0;
  const most = Math.max(resource?.capacity ?? 0, ...(resource?.changes.map(({ capacity }) => capacity) ?? []));
  if (most < amount) return `it needs ${amount} places of ${name} at once, and there are never more than ${most}`;
  const isCure = conditions.some((one) => one.kind === 'hold-cure' && one.taskId === taskId);
  const places = amount === 1 ? 'a place' : `${amount} places`;
  return `it needs ${places} of ${name}${isCure ? ' until its cure is far enough' : ''}, which are not free then`;
}

function fixedText(condition: Condition, shop: ShopProblem): readonly string[] {
  if (condition.kind !== 'fixed') return [];
  const task = taskOf(shop, condition.taskId);
  const label = visitLabel(shop.about.get(condition.taskId));
  switch (task?.state.kind) {
    case 'pinned':
      return [`${label} is pinned ${timeText(task.state.startMinute, shop)}`];
    case 'under-way':
      return [`${label} is under way`];
    default:
      return [`${label} still cures`];
  }
}

function releaseText(condition: Condition, shop: ShopProblem): readonly string[] {
  const { problem, about } = shop;
  if (condition.kind === 'release') {
    const task = taskOf(shop, condition.taskId);
    const why = about.get(condition.taskId)?.materialWait?.because;
    const from = dateAt(task?.releaseMinute ?? 0, shop);
    return [why === undefined ? `it may not begin before ${from}` : `it may not begin before ${from}, since ${why}`];
  }
  if (condition.kind !== 'batch-release') return [];
  const batch = problem.batches.find(({ id }) => id === condition.batchId);
  return [`${batch?.name ?? 'the batch'} may not begin before ${dateAt(batch?.releaseMinute ?? 0, shop)}`];
}

function whoText(conditions: readonly Condition[], shop: ShopProblem): string {
  const own = conditions.find((one) => one.kind === 'who');
  const task = own === undefined ? undefined : taskOf(shop, own.taskId);
  const people = task === undefined ? [] : attendants(shop.problem, task);
  if (people.length === 0) return 'nobody who works here may do it';
  const names = people.map(({ name }) => name).join(' and ');
  return people.every(({ sessions }) => sessions.length === 0)
    ? `${names} alone may do it and has no bench hours in the weeks in view`
    : `${names} alone may do it and is not at the bench then`;
}

function hoursText(
  conditions: readonly Condition[],
  taskId: string,
  holds: readonly Extract<Condition, { kind: 'hold' }>[],
  windows: readonly string[],
  shop: ShopProblem,
): string {
  const own = conditions.find((one) => one.kind === 'hours' && one.taskId === taskId);
  const first = own ?? conditions.find((one) => one.kind === 'hours');
  const task = first?.kind === 'hours' ? taskOf(shop, first.taskId) : undefined;
  if (task === undefined) return 'nobody is at the bench then';
  const needed = task.attendedMinutes + (task.setUp?.minutes ?? 0);
  const longest = longestSession(shop, task);
  if (longest === null) return 'nobody who may do it has bench hours in the weeks in view';
  const longestMinutes = longest.endMinute - longest.startMinute;
  if (conditions.some((one) => one.kind === 'one-go' && one.taskId === task.id) && longestMinutes < needed) {
    return `it takes ${minutesText(needed)} in one go, and the longest session is ${minutesText(longestMinutes)} (${dateAt(longest.startMinute, shop)})`;
  }
  const name = (id: string) => shop.problem.resources.find((one) => one.id === id)?.name ?? 'a place';
  const during = [
    ...new Set(holds.map(({ resourceId }) => `${name(resourceId)} has room for it`)),
    ...windows.map((window) => `${window} is open`),
  ];
  const when = during.length === 0 ? 'then' : `while ${during.join(' and ')}`;
  return `nobody who may do it is at the bench for ${minutesText(needed)} ${when}`;
}

/** The longest session of those who may do a task, the first of several; null where they have none. */
function longestSession({ problem }: ShopProblem, task: Task): MinuteSpan | null {
  let longest: MinuteSpan | null = null;
  for (const { sessions } of attendants(problem, task)) {
    for (const session of sessions) {
      const most = longest === null ? 0 : longest.endMinute - longest.startMinute;
      if (session.endMinute - session.startMinute > most) longest = session;
    }
  }
  return longest;
}

function timeText(minute: number, { problem, zone }: ShopProblem): string {
  return weekdayClockText(problem.epochAt + minute * MINUTE_MS, zone);
}

function dateAt(minute: number, { problem, zone }: ShopProblem): string {
  return dateText(problem.epochAt + minute * MINUTE_MS, zone);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
