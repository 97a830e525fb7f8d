import type { CourseSettings, TemperatureCourse } from '@/lib/cure/course';
import { firstAfter } from '@/lib/cure/course';
import { CourseBuilder } from '@/lib/cure/course-builder';
import { gapLimitMs, LONGEST_BRIDGE_MS, type ReadingSeries } from '@/lib/cure/reading-series';
import { profilePieces } from '@/lib/cure/temperature-profile';
import type { Instant } from '@/lib/units/instant';

/**
 * The shop's temperature from `fromAt` to `horizonAt`, from its log where there is one and its profile elsewhere.
 *
 * Rules, all chosen here:
 * - Between two readings the temperature runs in a straight line; low and high are that less and plus the sensor's
 *   tolerance.
 * - A silence longer than `gapLimitMs` is a gap. Central: a straight line up to six hours, else the profile. Low: the
 *   lowest of the two readings, the floor and the central line; high: the highest of them and the ceiling. So the
 *   slow lane stands still in a gap in which the room may have been too cold.
 * - Within one gap limit before the first and after the last reading, that reading is held; low and high also take in
 *   what the profile says there. Elsewhere the profile, plus and minus its tolerance.
 * A warmer history is nowhere colder on any lane.
 *
 * `readings` may begin before `fromAt` and end after `horizonAt`; hand over at least one before `fromAt` if there is
 * one. The course covers at least `[fromAt, horizonAt]`. Throws RangeError for `fromAt > horizonAt`, a tolerance
 * below 0, `floorC > ceilingC` or an unknown zone.
 */
export function temperatureCourse(
  readings: ReadingSeries,
  settings: CourseSettings,
  fromAt: Instant,
  horizonAt: Instant,
): TemperatureCourse {
  checkSettings(settings, fromAt, horizonAt);
  const limitMs = gapLimitMs(readings);
  const { at } = readings;
  const first = Math.max(0, firstAfter(at, fromAt) - 1);
  const end = Math.min(at.length, firstAfter(at, horizonAt) + 1);
  const builder = new CourseBuilder(end - first, settings);
  if (first >= end) {
    builder.profile(piecesOf(settings, fromAt, horizonAt));
    return builder.course(limitMs);
  }
  const firstAt = at[first] ?? 0;
  const lastAt = at[end - 1] ?? 0;
  if (fromAt < firstAt) {
    const heldFromAt = Math.max(fromAt, firstAt - limitMs);
    builder.profile(piecesOf(settings, fromAt, heldFromAt));
    builder.held(readings.temperatureC[first] ?? 0, piecesOf(settings, heldFromAt, firstAt));
  }
  addReadings(builder, readings, first, end, limitMs, settings);
  if (horizonAt > lastAt) {
    const heldToAt = Math.min(horizonAt, lastAt + limitMs);
    builder.held(readings.temperatureC[end - 1] ?? 0, piecesOf(settings, lastAt, heldToAt));
    builder.profile(piecesOf(settings, heldToAt, horizonAt));
  }
  return builder.course(limitMs);
}

function addReadings(
  builder: CourseBuilder,
  readings: ReadingSeries,
  first: number,
  end: number,
  limitMs: number,
  settings: CourseSettings,
): void {
  const { at } = readings;
  let runStart = first;
  for (let i = first + 1; i <= end; i++) {
    const gapStartAt = at[i - 1] ?? 0;
    const gapEndAt = at[i] ?? 0;
    if (i < end && gapEndAt - gapStartAt <= limitMs) continue;
    builder.readings(readings, runStart, i);
    runStart = i;
    if (i === end) return;
    const bridged = gapEndAt - gapStartAt <= LONGEST_BRIDGE_MS;
    const beforeC = readings.temperatureC[i - 1] ?? 0;
    const afterC = readings.temperatureC[i] ?? 0;
    if (bridged) builder.bridge(gapStartAt, beforeC, gapEndAt, afterC);
    else builder.gap(beforeC, afterC, piecesOf(settings, gapStartAt, gapEndAt));
  }
}

function piecesOf(settings: CourseSettings, fromAt: Instant, toAt: Instant) {
  return fromAt < toAt ? profilePieces(settings.profile, settings.zone, fromAt, toAt) : [];
}

function checkSettings(settings: CourseSettings, fromAt: Instant, horizonAt: Instant): void {
  if (!(fromAt <= horizonAt)) throw new RangeError(`temperatureCourse needs fromAt <= horizonAt, got ${fromAt}`);
  const { profileToleranceC, sensorToleranceC, floorC, ceilingC } = settings;
  if (!(profileToleranceC >= 0 && sensorToleranceC >= 0)) {
    throw new RangeError(`temperatureCourse needs tolerances >= 0, got ${profileToleranceC} and ${sensorToleranceC}`);
  }
  if (!(floorC <= ceilingC)) throw new RangeError(`temperatureCourse needs floorC <= ceilingC, got ${floorC}`);
}
