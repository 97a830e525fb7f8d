import 'server-only';
import type { TemperatureCourse } from '@/lib/cure/course';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { findBatchHead } from '@/prisma/data/batches';
import { benchVersion } from '@/prisma/data/bench-version';
import type { ShopSettings } from '@/prisma/data/shop';
import { type Bench, type BenchEntry, benchEntry, benchOf } from './bench';
import { currentCourse, pastCourse } from './cure-course';
import { firstMixedAt, foldedBatch, knownBatch } from './known-batches';

/** A batch alone on the bench, with the temperature it cured in. */
export interface BatchPage {
  readonly entry: BenchEntry;
  readonly bench: Bench;
  readonly course: TemperatureCourse;
}

/** A finished batch this old is read with its own stretch of the log instead of all of it up to now. Chosen. */
const PAST_MS = 40 * 24 * HOUR_MS;

/** One batch, open or finished, as its page shows it; null when there is none of this id. */
export async function loadBatchPage(
  database: Db,
  shop: ShopSettings,
  batchId: string,
  nowAt: Instant,
): Promise<BatchPage | null> {
  const head = await findBatchHead(database, batchId);
  if (head === null) return null;
  const version = `${head.lastSeq} ${await benchVersion(database, shop.cureSensorId, shop.version)}`;
  const folded = await foldedBatch(database, head);
  const fromAt = firstMixedAt([folded]) ?? head.openedAt;
  const isPast = head.finishedAt !== null && head.finishedAt < nowAt - PAST_MS;
  const cure = isPast
    ? await pastCourse(database, shop, Math.min(fromAt, head.openedAt), head.finishedAt ?? nowAt)
    : await currentCourse(database, shop, fromAt, nowAt);
  const entry = await benchEntry(database, shop, head, knownBatch(batchId, folded, cure), nowAt);
  return { entry, bench: { ...benchOf([entry], nowAt), version }, course: cure.course };
}
