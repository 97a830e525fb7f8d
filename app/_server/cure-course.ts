import 'server-only';
import { type CureReader, courseReader } from '@/lib/batch/cure-reader';
import type { CourseSettings, TemperatureCourse } from '@/lib/cure/course';
import { lanesOfCourse } from '@/lib/cure/cure-lanes';
import { NO_READINGS, type ReadingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { findSensorVersion, loadReadingSeries, renewReadingSeries } from '@/prisma/data/cure-temperatures';
import type { ShopSettings } from '@/prisma/data/shop';

/** The shop's temperature over a stretch of time, and what reads cure clocks off it. The same object while both hold. */
export interface CureCourse {
  readonly course: TemperatureCourse;
  readonly reader: CureReader;
}

const DAY_MS = 24 * HOUR_MS;
/** How far ahead releases are looked for: a cold shop's last milestone lies within it. Chosen. */
const HORIZON_DAYS = 60;
/** Course kept before the first mix: a reading or two of run-in. Chosen. */
const LEAD_MS = DAY_MS;
/** A series that begins this much earlier than needed is still used. Chosen. */
const MOST_SURPLUS_MS = 40 * DAY_MS;

interface Kept {
  readonly sensorId: string;
  readonly version: number;
  readonly fromAt: Instant;
  readonly series: ReadingSeries;
}

let keptSeries: Kept | null = null;
let keptCourse: { readonly key: string; readonly fromAt: Instant; readonly value: CureCourse } | null = null;

/**
 * The course that the open batches are judged by: from the first of their mixes to the horizon. Kept in this process
 * and keyed by the versions in the database, so that it is right whichever process wrote a reading or a setting; one
 * new reading costs loading that reading and summing the course again, however long the log is.
 */
export async function currentCourse(
  reader: DbReader,
  shop: ShopSettings,
  firstMixedAt: Instant,
  nowAt: Instant,
): Promise<CureCourse> {
  const { fromAt, horizonAt } = currentFrame(firstMixedAt, nowAt);
  const { series, version } = await currentSeries(reader, shop.cureSensorId, fromAt);
  const key = [shop.cureSensorId, version, shop.version, horizonAt].join(' ');
  const kept = keptCourse;
  if (kept !== null && kept.key === key && covers(kept.fromAt, fromAt)) return kept.value;
  const value = makeCourse(series, shop, fromAt, horizonAt);
  keptCourse = { key, fromAt, value };
  return value;
}

/** The same for a shop whose usual week is another than its own; not kept. */
export async function supposedCourse(
  reader: DbReader,
  shop: ShopSettings,
  firstMixedAt: Instant,
  nowAt: Instant,
): Promise<CureCourse> {
  const { fromAt, horizonAt } = currentFrame(firstMixedAt, nowAt);
  const { series } = await currentSeries(reader, shop.cureSensorId, fromAt);
  return makeCourse(series, shop, fromAt, horizonAt);
}

/** Whole days, so that the course changes only when it must. */
function currentFrame(firstMixedAt: Instant, nowAt: Instant) {
  return {
    fromAt: wholeDay(Math.min(firstMixedAt, nowAt) - LEAD_MS),
    horizonAt: wholeDay(nowAt) + (HORIZON_DAYS + 1) * DAY_MS,
  };
}

/** Whether something kept from `keptFromAt` on serves for `fromAt`: it begins before, but not so long as to be slow. */
function covers(keptFromAt: Instant, fromAt: Instant): boolean {
  return keptFromAt <= fromAt && fromAt - keptFromAt < MOST_SURPLUS_MS;
}

/** The course of a stretch of the past, for a batch that is finished; not kept. */
export async function pastCourse(
  reader: DbReader,
  shop: ShopSettings,
  fromAt: Instant,
  toAt: Instant,
): Promise<CureCourse> {
  const startAt = wholeDay(fromAt) - DAY_MS;
  const endAt = wholeDay(toAt) + (HORIZON_DAYS + 1) * DAY_MS;
  const series =
    shop.cureSensorId === null ? NO_READINGS : await loadReadingSeries(reader, shop.cureSensorId, startAt, endAt);
  return makeCourse(series, shop, startAt, endAt);
}

async function currentSeries(
  reader: DbReader,
  sensorId: string | null,
  fromAt: Instant,
): Promise<{ series: ReadingSeries; version: number }> {
  // The version is read before the rows: rows that arrive in between are found again at the next look.
  const version = sensorId === null ? null : await findSensorVersion(reader, sensorId);
  if (sensorId === null || version === null) return { series: NO_READINGS, version: 0 };
  const kept = keptSeries;
  const isUsable = kept !== null && kept.sensorId === sensorId && covers(kept.fromAt, fromAt);
  if (isUsable && kept.version === version) return kept;
  const series = isUsable
    ? await renewReadingSeries(reader, sensorId, kept.fromAt, kept.series)
    : await loadReadingSeries(reader, sensorId, fromAt);
  keptSeries = { sensorId, version, fromAt: isUsable ? kept.fromAt : fromAt, series };
  return keptSeries;
}

function makeCourse(series: ReadingSeries, shop: ShopSettings, fromAt: Instant, toAt: Instant): CureCourse {
  const settings: CourseSettings = {
    zone: shop.timeZone,
    profile: shop.temperatureProfile,
    profileToleranceC: shop.profileToleranceC,
    sensorToleranceC: shop.sensorToleranceC,
    floorC: shop.floorC,
    ceilingC: shop.ceilingC,
  };
  const course = temperatureCourse(series, settings, fromAt, toAt);
  return { course, reader: courseReader(lanesOfCourse(course)) };
}

function wholeDay(at: Instant): Instant {
  return Math.floor(at / DAY_MS) * DAY_MS;
}
