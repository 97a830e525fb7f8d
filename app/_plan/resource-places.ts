import type { Resource } from '@/lib/schedule/planning-problem';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { addDays, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';
import type { ShopResource } from '@/prisma/data/resources';

/** A resource with its places from minute to minute: daily hours by the wall clock, and days that differ. */
export function resourcePlaces(
  resource: ShopResource,
  zone: string,
  epochAt: Instant,
  fromAt: Instant,
  toAt: Instant,
): Resource {
  const changes: { fromMinute: number; capacity: number }[] = [];
  let last = resource.capacity;
  const set = (at: Instant, capacity: number) => {
    if (capacity === last) return;
    changes.push({ fromMinute: Math.round((at - epochAt) / MINUTE_MS), capacity });
    last = capacity;
  };
  const { openFromMinute, openToMinute } = resource;
  for (let day = wallTimeAt(fromAt, zone).day; day <= wallTimeAt(toAt, zone).day; day = addDays(day, 1)) {
    const places = resource.changes.find(({ fromOn, toOn }) => fromOn <= day && day <= toOn)?.capacity;
    const capacity = places ?? resource.capacity;
    const isAlways = openFromMinute === null || openToMinute === null;
    set(instantOfWallTime(day, 0, zone), isAlways ? capacity : 0);
    if (isAlways) continue;
    set(instantOfWallTime(day, openFromMinute, zone), capacity);
    set(instantOfWallTime(day, openToMinute, zone), 0);
  }
  return { id: resource.id, name: resource.name, capacity: resource.capacity, changes: lastOfMinute(changes) };
}

/** Of changes at the same minute the last holds: a day that closes at midnight begins anew at once. */
function lastOfMinute(changes: readonly { readonly fromMinute: number; readonly capacity: number }[]) {
  return changes.filter((change, index) => change.fromMinute !== changes[index + 1]?.fromMinute);
}
