import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { addDays, instantOfWallTime, type Weekday, wallTimeAt, zoneOffsetMs } from '@/lib/units/zoned-time';

/** The shop's usual temperature over a week of wall time: used where there is no reading, and for the future. */
export interface TemperatureProfile {
  /** Outside all periods (nights, days off), degC. */
  readonly otherwiseC: number;
  /** Where periods overlap, the later one in the list holds. */
  readonly periods: readonly ProfilePeriod[];
}

interface ProfilePeriod {
  /** The days on which the period begins, ISO 8601. */
  readonly weekdays: readonly Weekday[];
  /** Minutes of the wall clock since 00:00, 0 to 1439. */
  readonly fromMinute: number;
  /** 1 to 1440; at or before `fromMinute` means that the period ends on the next day. */
  readonly toMinute: number;
  readonly temperatureC: number;
}

/** A stretch of one temperature between two instants. */
export interface ProfilePiece {
  readonly startAt: Instant;
  readonly endAt: Instant;
  readonly temperatureC: number;
}

/**
 * The profile's temperature when the wall clock shows `minuteOfDay` (0 to 1439) on a weekday, degC.
 */
export function profileTemperatureC(profile: TemperatureProfile, weekday: Weekday, minuteOfDay: number): number {
  const dayBefore = weekday === 1 ? 7 : weekday - 1;
  let temperatureC = profile.otherwiseC;
  for (const period of profile.periods) {
    const overnight = period.toMinute <= period.fromMinute;
    const today =
      minuteOfDay >= period.fromMinute && (overnight || minuteOfDay < period.toMinute) && on(period, weekday);
    const sinceYesterday = overnight && minuteOfDay < period.toMinute && on(period, dayBefore);
    if (today || sinceYesterday) temperatureC = period.temperatureC;
  }
  return temperatureC;
}

/**
 * The profile from `fromAt` to `toAt` as pieces of constant temperature in UTC, gapless and in order; neighbours
 * differ in temperature. The profile follows the wall clock: on a day of a clock change a night is an hour shorter
 * or longer, and a wall time that occurs twice counts twice. Throws RangeError for an unknown zone, or when
 * `toAt < fromAt`.
 */
export function profilePieces(
  profile: TemperatureProfile,
  zone: string,
  fromAt: Instant,
  toAt: Instant,
): readonly ProfilePiece[] {
  if (!(fromAt <= toAt)) throw new RangeError(`profilePieces needs fromAt at or before toAt, got ${fromAt} to ${toAt}`);
  const pieces: { startAt: Instant; endAt: Instant; temperatureC: number }[] = [];
  let startAt = fromAt;
  for (const edgeAt of [...edgesBetween(profile, zone, fromAt, toAt), toAt]) {
    if (edgeAt <= startAt) continue;
    // The temperature is the same all the way between two edges, so any instant of the piece tells it.
    const { weekday, minuteOfDay } = wallTimeAt(startAt, zone);
    const temperatureC = profileTemperatureC(profile, weekday, minuteOfDay);
    const last = pieces.at(-1);
    if (last !== undefined && last.temperatureC === temperatureC) last.endAt = edgeAt;
    else pieces.push({ startAt, endAt: edgeAt, temperatureC });
    startAt = edgeAt;
  }
  return pieces;
}

/** Every instant at which the profile may change: edges of periods, midnights and clock changes, in order. */
function edgesBetween(profile: TemperatureProfile, zone: string, fromAt: Instant, toAt: Instant): readonly Instant[] {
  const minutes = new Set([0, ...profile.periods.flatMap((period) => [period.fromMinute, period.toMinute])]);
  const edges: Instant[] = [];
  const lastDay = wallTimeAt(toAt, zone).day;
  for (let day = wallTimeAt(fromAt, zone).day; day <= lastDay; day = addDays(day, 1)) {
    const startAt = instantOfWallTime(day, 0, zone);
    const endAt = instantOfWallTime(day, 1440, zone);
    const shiftMs = endAt - startAt - 24 * HOUR_MS;
    for (const minute of minutes) {
      edges.push(startAt + minute * 60_000);
      if (shiftMs !== 0) edges.push(startAt + minute * 60_000 + shiftMs);
    }
    if (shiftMs !== 0) edges.push(clockChangeBetween(zone, startAt, endAt));
  }
  return edges.filter((edgeAt) => edgeAt > fromAt && edgeAt < toAt).sort((a, b) => a - b);
}

/** The first instant with the new offset, by halving; the offset differs between the two ends. */
function clockChangeBetween(zone: string, startAt: Instant, endAt: Instant): Instant {
  const offsetMs = zoneOffsetMs(startAt, zone);
  let before = startAt;
  let after = endAt;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (zoneOffsetMs(middle, zone) === offsetMs) before = middle;
    else after = middle;
  }
  return after;
}

function on(period: ProfilePeriod, weekday: number): boolean {
  return period.weekdays.some((day) => day === weekday);
}
