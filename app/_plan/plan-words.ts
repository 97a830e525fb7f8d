import { pieceText } from '@/lib/batch/batch-words';
import type { UnplacedReason } from '@/lib/schedule/shop-plan';
import type { Violation } from '@/lib/schedule/violation';
import { durationText } from '@/lib/units/format-duration';
import { dateClockText, weekdayClockText } from '@/lib/units/format-instant';
import { MINUTE_MS } from '@/lib/units/instant';
import type { ShopProblem } from './shop-problem';
import type { TaskAbout } from './task-about';

/** `Batch 3, Glue anchors, pieces 1-12`. */
export function visitLabel(about: Pick<TaskAbout, 'batchNumber' | 'operationName' | 'pieces'> | undefined): string {
  if (about === undefined) return 'a step that is not on the route any more';
  return `Batch ${about.batchNumber}, ${about.operationName}, ${pieceText(about.pieces)}`;
}

/** Why a step has no place in a plan, and what would lift it. */
export function unplacedWords(reason: UnplacedReason, { problem, about }: ShopProblem): string {
  switch (reason.kind) {
    case 'nobody-may':
      return 'Nobody who works here may do it: give somebody the skill, or let others do it in the model’s planning.';
    case 'no-session-long-enough':
      return `It takes ${minutesText(reason.neededMinutes)} in one go, and the longest session of who may do it has ${minutesText(reason.longestMinutes)}: lengthen a session, let it be put down, or do fewer pieces at once.`;
    case 'resource-too-small': {
      const name = problem.resources.find(({ id }) => id === reason.resourceId)?.name ?? 'What holds it';
      return `${name} never has ${reason.amount} places free for it, at most ${reason.most}: do fewer pieces at once, or add places.`;
    }
    case 'never-cured':
      return 'The cure it waits for is not reached within the weeks in view: the shop is too cold for it, or its data sheet gives no hours.';
    case 'window-cannot-be-met':
      return `No bench hours fall into ${linkText(reason.linkId, about, problem)}: add a session inside the window, or allow the remedy in the model’s planning.`;
    case 'no-room-before-horizon':
      return 'The bench is full for the eight weeks in view: add hours, or take a batch out.';
    case 'waits-for-unplaced':
      return `It waits for ${visitLabel(about.get(reason.taskId))}, which has no place either.`;
  }
}

/** What is wrong with a plan, in a sentence. */
export function violationWords(violation: Violation, shop: ShopProblem, zone: string): string {
  const { problem, about } = shop;
  const label = (id: string | undefined) => visitLabel(id === undefined ? undefined : about.get(id));
  const first = label(violation.taskIds[0]);
  const time = (minute: number) => weekdayClockText(problem.epochAt + minute * MINUTE_MS, zone);
  switch (violation.kind) {
    case 'unknown-task':
      return 'A step of the plan is not on any route any more.';
    case 'placed-twice':
      return `${first} is in the plan twice.`;
    case 'missing':
      return `${first} is not planned yet.`;
    case 'too-early': {
      const wait = about.get(violation.taskIds[0] ?? '')?.materialWait;
      if (wait != null) return `${first} begins before its material is there: ${wait.because}.`;
      return `${first} begins before ${dateClockText(problem.epochAt + violation.notBeforeMinute * MINUTE_MS, zone)}: that hour has passed, or the batch may not begin earlier.`;
    }
    case 'beyond-horizon':
      return `${first} ends after the weeks in view.`;
    case 'moved-what-is-fixed':
      return `${first} is pinned or under way at another hour than the plan says.`;
    case 'wrong-person':
      if (violation.personId === null) return `${first} has nobody to do it.`;
      return `${first}: ${personName(violation.personId, shop)} may not do it or does not work here.`;
    case 'outside-bench-hours':
      return `${first} lies outside the bench hours at ${time(violation.atMinute)}.`;
    case 'put-down':
      return `${first} is to be done in one go and within one session.`;
    case 'wrong-length':
      return `${first} needs ${minutesText(violation.neededMinutes)}, and the plan gives ${minutesText(violation.plannedMinutes)}.`;
    case 'person-twice':
      return `${personName(violation.personId, shop)} has two things to do at ${time(violation.atMinute)}: ${violation.taskIds.map(label).join(' and ')}.`;
    case 'set-up-missing':
      return `${first} has no time to get ready in its session.`;
    case 'over-capacity': {
      const name = problem.resources.find(({ id }) => id === violation.resourceId)?.name ?? 'A place';
      return `${name} is over-full at ${time(violation.atMinute)}: ${violation.held} of ${violation.capacity} places, by ${violation.taskIds.map(label).join(' and ')}.`;
    }
    case 'least-lag': {
      const link = problem.links.find(({ id }) => id === violation.linkId);
      const from = label(link?.fromTaskId);
      const to = label(link?.toTaskId);
      if (violation.notBeforeMinute === null)
        return `${to} waits for a cure that is not reached in the weeks in view: ${from}.`;
      return `${to} begins ${time(violation.plannedMinute)}, but ${from} is ready for it from ${time(violation.notBeforeMinute)}.`;
    }
    case 'greatest-lag': {
      const link = problem.links.find(({ id }) => id === violation.linkId);
      return `${label(link?.toTaskId)} ends ${time(violation.plannedMinute)}, after the recoat window of ${label(link?.fromTaskId)} closes ${time(violation.notAfterMinute)}.`;
    }
    case 'hold-without-end':
      return `${first} takes places that are never free again within the weeks in view.`;
    case 'wrong-remedy':
      return `${first}: a recoat window closes before it, and the plan has no time to sand.`;
  }
}

/** Minutes as a length of time. */
export function minutesText(minutes: number): string {
  return durationText(minutes * MINUTE_MS);
}

function personName(personId: string | null, { problem }: ShopProblem): string {
  return problem.people.find(({ id }) => id === personId)?.name ?? 'Nobody';
}

function linkText(linkId: string, about: ShopProblem['about'], { links }: ShopProblem['problem']): string {
  const link = links.find(({ id }) => id === linkId);
  return `the recoat window of ${visitLabel(link === undefined ? undefined : about.get(link.fromTaskId))}`;
}
