import type { Lift } from '@/lib/schedule/lift';
import { clockText, dateClockText, dateText } from '@/lib/units/format-instant';
import { MINUTE_MS } from '@/lib/units/instant';
import { minutesText, visitLabel } from './plan-words';
import type { ShopProblem } from './shop-problem';

/** A change that would make something possible, to be followed by "would do". */
export function liftSentence(lift: Lift, shop: ShopProblem): string {
  const { problem, about, zone } = shop;
  const at = (minute: number) => problem.epochAt + minute * MINUTE_MS;
  const resource = (id: string) => problem.resources.find((one) => one.id === id)?.name ?? 'what holds it';
  const label = (taskId: string) => visitLabel(about.get(taskId));
  switch (lift.kind) {
    case 'hours':
      return hoursText(lift, shop);
    case 'places':
      return `${lift.places} more ${lift.places === 1 ? 'place' : 'places'} of ${resource(lift.resourceId)}`;
    case 'open-longer':
      return `${resource(lift.resourceId)} open ${minutesText(lift.minutes)} longer`;
    case 'fewer-places':
      return `no more than ${lift.amount} places at once, with fewer pieces in a visit,`;
    case 'shorter':
      return shorterText(lift, shop);
    case 'put-down':
      return `letting it be put down, in stretches of ${minutesText(lift.leastPieceMinutes)} or less,`;
    case 'longer-window':
      return `a recoat window ${atLeastText(lift.minutes)} longer`;
    case 'remedy':
      return 'allowing a remedy for the closed window, in the model’s planning,';
    case 'cure-within': {
      const link = problem.links.find(({ id }) => id === lift.linkId);
      return `a cure of ${label(link?.fromTaskId ?? '')} within ${atMostText(lift.minutes)}, by a warmer shop or a faster glue,`;
    }
    case 'hold-within':
      return `${resource(lift.resourceId)} free again after ${atMostText(lift.minutes)}`;
    case 'batch-release':
      return `beginning by ${dateClockText(at(lift.minute), zone)}`;
    case 'release': {
      const isMaterial = about.get(lift.taskId)?.materialWait != null;
      return `${isMaterial ? 'having its material' : 'beginning'} by ${dateClockText(at(lift.minute), zone)}`;
    }
    case 'unpin':
      return `letting go the pin of ${label(lift.taskId)}`;
    case 'pin-at':
      return `pinning it at ${dateClockText(at(lift.minute), zone)}`;
    case 'anyone':
      return 'letting others do it';
    case 'leave-out':
      return `leaving out ${problem.batches.find(({ id }) => id === lift.batchId)?.name ?? 'a batch'}`;
  }
}

function hoursText(lift: Extract<Lift, { kind: 'hours' }>, { problem, zone }: ShopProblem): string {
  const name = problem.people.find(({ id }) => id === lift.personId)?.name ?? 'somebody';
  const startAt = problem.epochAt + lift.startMinute * MINUTE_MS;
  const endAt = problem.epochAt + lift.endMinute * MINUTE_MS;
  const more = minutesText(lift.endMinute - lift.startMinute);
  if (lift.extends === null) {
    return `${name} at the bench ${dateText(startAt, zone)}, ${clockText(startAt, zone)}–${clockText(endAt, zone)},`;
  }
  const isAtEnd = lift.extends.endMinute === lift.startMinute;
  const until = isAtEnd ? `until ${clockText(endAt, zone)}` : `from ${clockText(startAt, zone)} on`;
  return `a session ${more} longer (${name}, ${dateText(startAt, zone)} ${until})`;
}

/** Minutes at once are pieces at once, where each piece takes its share. */
function shorterText({ taskId, attendedMinutes }: Extract<Lift, { kind: 'shorter' }>, shop: ShopProblem): string {
  const pieces = shop.about.get(taskId)?.pieces.length ?? 0;
  const minutes = shop.problem.tasks.find(({ id }) => id === taskId)?.attendedMinutes ?? 0;
  const fewer = minutes === 0 ? 0 : Math.floor((pieces * attendedMinutes) / minutes);
  if (fewer === 0) return `a step of no more than ${minutesText(attendedMinutes)}`;
  return `no more than ${fewer} ${fewer === 1 ? 'piece' : 'pieces'} in a visit`;
}

/** A length that is enough: from a day on rounded up to the hour. */
function atLeastText(minutes: number): string {
  return minutesText(minutes < 1440 ? minutes : Math.ceil(minutes / 60) * 60);
}

/** A length that is not too long: from a day on rounded down to the hour. */
function atMostText(minutes: number): string {
  return minutesText(minutes < 1440 ? minutes : Math.floor(minutes / 60) * 60);
}
