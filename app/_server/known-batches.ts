import 'server-only';
import type { BatchState } from '@/lib/batch/batch-state';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEvent } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { BatchPlan } from '@/lib/batch/plan';
import { releaseBook } from '@/lib/batch/release-book';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { listBatchEvents, listEventsOfBatches } from '@/prisma/data/batch-events';
import { findRevisionRoute, type RevisionRoute } from '@/prisma/data/batch-plan';
import type { BatchHead } from '@/prisma/data/batches';
import type { ShopSettings } from '@/prisma/data/shop';
import { type CureCourse, currentCourse } from './cure-course';

/** What names a batch's state: it has exactly one state at each seq, because events are only ever appended. */
export type BatchVersion = Pick<BatchHead, 'id' | 'revisionId' | 'quantity' | 'lastSeq'>;

/** A batch's plan, history and folded state. */
export interface FoldedBatch {
  readonly lastSeq: number;
  readonly plan: BatchPlan;
  readonly events: readonly BatchEvent[];
  readonly state: BatchState;
}

/** Most batches and routes kept in memory; the one unused for longest goes first. Chosen. */
const MOST_KEPT = 2_000;

/** Keeps the most recently used entries. */
class Recent<T> {
  readonly #entries = new Map<string, T>();

  get(key: string): T | undefined {
    const value = this.#entries.get(key);
    if (value === undefined) return undefined;
    this.#entries.delete(key);
    this.#entries.set(key, value);
    return value;
  }

  set(key: string, value: T): void {
    this.#entries.delete(key);
    this.#entries.set(key, value);
    const oldest = this.#entries.keys().next();
    if (this.#entries.size > MOST_KEPT && !oldest.done) this.#entries.delete(oldest.value);
  }
}

const routes = new Recent<RevisionRoute>();
const folded = new Recent<FoldedBatch>();
const known = new Recent<{ readonly folded: FoldedBatch; readonly course: CureCourse; readonly batch: KnownBatch }>();

/** The route of a batch's revision, which is frozen and so never changes. */
export async function routeOf(reader: DbReader, revisionId: string): Promise<RevisionRoute> {
  const kept = routes.get(revisionId);
  if (kept !== undefined) return kept;
  const route = await findRevisionRoute(reader, revisionId);
  if (route === null) throw new Error(`a batch names revision ${revisionId}, which is not there`);
  if (route.isFrozen) routes.set(revisionId, route);
  return route;
}

/** One batch folded at its newest seq: only events newer than what this process kept are loaded. */
export async function foldedBatch(reader: DbReader, version: BatchVersion): Promise<FoldedBatch> {
  const kept = folded.get(version.id);
  if (kept !== undefined && kept.lastSeq === version.lastSeq) return kept;
  const isOlder = kept !== undefined && kept.lastSeq < version.lastSeq;
  const newer = await listBatchEvents(reader, version.id, isOlder ? kept.lastSeq : 0);
  return keep(reader, version, isOlder ? [...kept.events, ...newer] : newer);
}

/** Many batches folded; those this process does not know yet are loaded in a few queries. */
export async function foldedBatches(reader: DbReader, versions: readonly BatchVersion[]): Promise<FoldedBatch[]> {
  const unknown = versions.filter((version) => folded.get(version.id) === undefined);
  const histories = await listEventsOfBatches(
    reader,
    unknown.map((version) => version.id),
  );
  const all: FoldedBatch[] = [];
  for (const version of versions) {
    const events = histories.get(version.id);
    all.push(events === undefined ? await foldedBatch(reader, version) : await keep(reader, version, events));
  }
  return all;
}

async function keep(reader: DbReader, version: BatchVersion, events: readonly BatchEvent[]): Promise<FoldedBatch> {
  const { plan: route } = await routeOf(reader, version.revisionId);
  // An event appended since the batch's row was read belongs to the next version.
  const upTo = events.filter((event) => event.seq <= version.lastSeq);
  const plan: BatchPlan = folded.get(version.id)?.plan ?? { ...route, quantity: version.quantity };
  const entry = { lastSeq: version.lastSeq, plan, state: foldBatch(plan, upTo), events: upTo };
  folded.set(version.id, entry);
  return entry;
}

/** A folded batch with its releases in a temperature; the same object while neither changed. */
export function knownBatch(id: string, batch: FoldedBatch, course: CureCourse): KnownBatch {
  const kept = known.get(id);
  if (kept !== undefined && kept.folded === batch && kept.course === course) return kept.batch;
  const value = { plan: batch.plan, state: batch.state, releases: releaseBook(course.reader) };
  known.set(id, { folded: batch, course, batch: value });
  return value;
}

/** The instant the first of these batches' mixes was mixed; null without one. */
export function firstMixedAt(batches: readonly FoldedBatch[]): Instant | null {
  let first: Instant | null = null;
  for (const { state } of batches) {
    for (const { mixedAt } of state.mixes) if (first === null || mixedAt < first) first = mixedAt;
  }
  return first;
}

/** Batches as their events and the shop's temperature tell, in the order given. */
export async function knownBatches(
  reader: DbReader,
  shop: ShopSettings,
  versions: readonly BatchVersion[],
  nowAt: Instant,
): Promise<{ readonly batches: readonly KnownBatch[]; readonly course: CureCourse }> {
  const all = await foldedBatches(reader, versions);
  const course = await currentCourse(reader, shop, firstMixedAt(all) ?? nowAt, nowAt);
  const batches = versions.map((version, index) => {
    const one = all[index];
    if (one === undefined) throw new Error('a batch was lost on the way');
    return knownBatch(version.id, one, course);
  });
  return { batches, course };
}
