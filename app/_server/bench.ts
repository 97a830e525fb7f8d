import 'server-only';
import type { HistoryEntry } from '@/lib/batch/batch-state';
import type { BatchWords } from '@/lib/batch/batch-words';
import type { BenchBatch, BenchLimits, BenchView } from '@/lib/batch/bench-entries';
import { benchView } from '@/lib/batch/bench-view';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { KnownBatch } from '@/lib/batch/evaluation';
import { sureAt } from '@/lib/batch/next-releases';
import type { CautionTopic } from '@/lib/contracts/caution-topic';
import type { Instant } from '@/lib/units/instant';
import type { Db, DbReader } from '@/prisma/client';
import { type BatchHead, listOpenBatchHeads } from '@/prisma/data/batches';
import { benchVersion } from '@/prisma/data/bench-version';
import type { ShopSettings } from '@/prisma/data/shop';
import { batchWords } from './batch-words';
import { knownBatches, routeOf } from './known-batches';

/** One open batch with everything that is said about it. */
export interface BenchEntry {
  readonly head: BatchHead;
  readonly batch: BenchBatch;
  readonly words: BatchWords;
  readonly cautions: ReadonlyMap<string, CautionTopic>;
}

/** An entry of some open batch's history. */
export interface RecentEntry {
  readonly entry: BenchEntry;
  readonly history: HistoryEntry;
}

/** All open batches at one instant. */
export interface Bench {
  readonly nowAt: Instant;
  /** Changes when something else than the clock changes the Bench. */
  readonly version: string;
  /** When the clock alone changes it next; null: not by what is known now. */
  readonly changesAt: Instant | null;
  readonly view: BenchView;
  /** By batch number. */
  readonly entries: readonly BenchEntry[];
  readonly entryOf: (batchId: string) => BenchEntry;
  /** The newest entries of all histories, newest first. */
  readonly recent: readonly RecentEntry[];
}

/** Entries shown to be corrected. Chosen: the last quarter of an hour of a busy bench. */
const RECENT_COUNT = 8;

/** Most lines of each list; their number is shown for the rest. Chosen: what one pair of hands can look through. */
const LIMITS: BenchLimits = { actions: 20, runningMixes: 8, releases: 10, held: 10, toFinish: 8 };

/** Loads the open batches and tells what the bench can do now. */
export async function loadBench(database: Db, shop: ShopSettings, nowAt: Instant): Promise<Bench> {
  // Read first: what changes in between is noticed at the next look.
  const version = await benchVersion(database, shop.cureSensorId, shop.version);
  const heads = await listOpenBatchHeads(database);
  const { batches } = await knownBatches(database, shop, heads, nowAt);
  const entries: BenchEntry[] = [];
  for (const [index, head] of heads.entries()) {
    const known = batches[index];
    if (known !== undefined) entries.push(await benchEntry(database, shop, head, known, nowAt));
  }
  return { ...benchOf(entries, nowAt), version };
}

/** One batch with everything that is said about it at an instant. */
export async function benchEntry(
  reader: DbReader,
  shop: ShopSettings,
  head: BatchHead,
  known: KnownBatch,
  nowAt: Instant,
): Promise<BenchEntry> {
  const { cautionByOperation } = await routeOf(reader, head.revisionId);
  const { id: batchId, number, dueOn } = head;
  return {
    head,
    batch: { ...known, batchId, number, dueOn, evaluation: evaluateBatch(known, nowAt) },
    words: batchWords(known, shop, nowAt),
    cautions: cautionByOperation,
  };
}

/** What these batches together let the bench do. */
export function benchOf(entries: readonly BenchEntry[], nowAt: Instant): Omit<Bench, 'version'> {
  const byId = new Map(entries.map((entry) => [entry.head.id, entry]));
  return {
    nowAt,
    changesAt: nextChangeAt(entries, nowAt),
    view: benchView(
      entries.map((entry) => entry.batch),
      nowAt,
      LIMITS,
    ),
    entries,
    entryOf: (batchId) => {
      const entry = byId.get(batchId);
      if (entry === undefined) throw new Error(`batch ${batchId} is not on the bench`);
      return entry;
    },
    recent: recentEntries(entries),
  };
}

/** The soonest instant after now at which some piece may go on, a window closes, or a pot life ends. */
export function nextChangeAt(entries: readonly Pick<BenchEntry, 'batch'>[], nowAt: Instant): Instant | null {
  let next = Number.POSITIVE_INFINITY;
  const consider = (at: Instant | null) => {
    if (at !== null && at > nowAt && at < next) next = at;
  };
  for (const { batch } of entries) {
    for (const { status } of batch.evaluation.groups) {
      if (status.kind === 'waits') consider(status.waiting.band.latestAt);
      if (status.kind === 'ready') consider(status.closesAt);
    }
    for (const release of batch.evaluation.nextReleases) consider(sureAt(release));
    for (const mix of batch.state.mixes) {
      if (mix.closedAt === null && mix.potLife.ok) consider(mix.potLife.lowerAt);
    }
  }
  return Number.isFinite(next) ? next : null;
}

function recentEntries(entries: readonly BenchEntry[]): RecentEntry[] {
  return entries
    .flatMap((entry) => entry.batch.state.history.slice(-RECENT_COUNT).map((history) => ({ entry, history })))
    .sort(
      (a, b) => b.history.event.recordedAt - a.history.event.recordedAt || b.history.event.seq - a.history.event.seq,
    )
    .slice(0, RECENT_COUNT);
}
