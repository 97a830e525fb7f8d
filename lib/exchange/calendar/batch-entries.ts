import type { BatchClock } from '@/lib/batch/batch-state';
import { type BatchWords, countText } from '@/lib/batch/batch-words';
import type { ReleaseBand } from '@/lib/batch/cure-reader';
import { milestoneText } from '@/lib/batch/describe-status';
import type { KnownBatch } from '@/lib/batch/evaluation';
import { statedMilestones } from '@/lib/batch/next-releases';
import { planIndex } from '@/lib/batch/plan-index';
import { lastBand } from '@/lib/batch/release-band';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { CalendarEntry } from '@/lib/exchange/calendar/calendar-entry';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';

/** A batch as its calendar entries name it. */
export interface NamedBatch extends KnownBatch {
  readonly number: number;
  readonly modelName: string;
  readonly words: Pick<BatchWords, 'operation' | 'mix'>;
}

/** Releases are told to five minutes, so that a degree more on the log does not move every entry. Chosen. */
const STEP_MS = 5 * MINUTE_MS;
/** Length of an entry that stands for an instant: most calendars do not show one without. Chosen. */
const INSTANT_MS = 15 * MINUTE_MS;
/** How long before a recoat window closes it rings. Chosen: time to fetch the brush. */
const RINGS_BEFORE_CLOSING = 60;

const ESTIMATE = 'Computed from the data sheet and the temperatures logged and expected; your product’s sheet holds.';

/**
 * What the cure clocks of an open batch put into a calendar: for every mix, each milestone that an operation not yet
 * done waits for, at the latest instant it may be reached, and its recoat window from the latest opening to the
 * earliest closing, with an alarm at both. Nothing is told of what cannot be judged or is not in sight.
 */
export function batchEntries(batch: NamedBatch): readonly CalendarEntry[] {
  return [...mixReleases(batch).values()].flatMap((release) => entryOf(batch, release));
}

interface MixRelease {
  readonly clock: BatchClock;
  /** `window`: from recoat-from to recoat-by. */
  readonly kind: Milestone | 'window';
  readonly band: ReleaseBand;
  readonly closesAt: Instant | null;
  readonly pieces: ReadonlySet<number>;
}

function mixReleases(batch: NamedBatch): ReadonlyMap<string, MixRelease> {
  const found = new Map<string, MixRelease>();
  for (const clock of batch.state.clocks) {
    for (const kind of awaitedKinds(batch, clock)) {
      const opening = batch.releases.release(clock, kind === 'window' ? 'recoat-from' : kind);
      if (!opening.ok) continue;
      const closing = kind === 'window' ? batch.releases.release(clock, 'recoat-by') : null;
      const key = `${clock.mixId} ${clock.operationId} ${kind}`;
      const known = found.get(key);
      found.set(key, {
        clock,
        kind,
        band: known === undefined ? opening.band : lastBand(known.band, opening.band),
        // All of a mix share its closing, which counts from the mixing.
        closesAt: closing?.ok === true ? closing.band.earliestAt : null,
        pieces: new Set([...(known?.pieces ?? []), ...clock.pieces]),
      });
    }
  }
  return found;
}

/** What of a clock something not yet done waits for; at the end of the route, the last milestone of its sheet. */
function awaitedKinds(batch: NamedBatch, clock: BatchClock): ReadonlySet<Milestone | 'window'> {
  const { operations, indexOf } = planIndex(batch.plan);
  const own = indexOf.get(clock.operationId);
  const kinds = new Set<Milestone | 'window'>();
  const dependents = own === undefined ? [] : (operations[own]?.neededBy ?? []);
  if (dependents.length === 0) {
    const last = statedMilestones(clock.sheet).findLast((milestone) => milestone !== 'recoat-by');
    if (last !== undefined) kinds.add(last);
  }
  for (const dependent of dependents) {
    const wait = operations[dependent]?.needs.find((need) => need.index === own)?.wait ?? 'done';
    if (wait === 'done') continue;
    const isOpen = clock.pieces.some((number) => {
      const stages = batch.state.pieces[number - 1]?.operations;
      return stages?.[dependent]?.doneAt === null && (wait !== 'recoat' || stages[own ?? -1]?.remediedAt === null);
    });
    if (isOpen) kinds.add(wait === 'recoat' ? 'window' : wait);
  }
  return kinds;
}

function entryOf(batch: NamedBatch, release: MixRelease): readonly CalendarEntry[] {
  const { clock, kind, band, closesAt, pieces } = release;
  if (band.latestAt === null) return [];
  const uid = `${kind}-${clock.mixId}-${clock.operationId}@lurewright`;
  const opensAt = Math.ceil(band.latestAt / STEP_MS) * STEP_MS;
  const of = `${batch.words.operation(clock.operationId)}, ${batch.words.mix(clock.mixId)}`;
  const what = `Batch ${batch.number}, ${batch.modelName}`;
  const where = `${of}, ${countText(pieces.size, 'piece')}.`;
  if (kind !== 'window') {
    const summary = `${what}: ready for ${milestoneText(kind)}`;
    const description = `${where} Not before the hour shown. ${ESTIMATE}`;
    const endAt = opensAt + INSTANT_MS;
    return [{ uid, startAt: opensAt, endAt, summary, description, isAttended: false, alarms: [] }];
  }
  if (closesAt === null) return [];
  const endAt = Math.floor(closesAt / STEP_MS) * STEP_MS;
  if (endAt <= opensAt) {
    const summary = `${what}: no recoat window is sure, sand before the next coat`;
    const description = `${where} It may close before it is sure to be open. ${ESTIMATE}`;
    return [{ uid, startAt: endAt - INSTANT_MS, endAt, summary, description, isAttended: false, alarms: [] }];
  }
  const rings = Math.min(RINGS_BEFORE_CLOSING, Math.floor((endAt - opensAt) / MINUTE_MS));
  return [
    {
      uid,
      startAt: opensAt,
      endAt,
      summary: `${what}: recoat window`,
      description: `${where} Recoat between the hours shown; after the end wash, dry and sand first. ${ESTIMATE}`,
      isAttended: false,
      alarms: [
        { from: 'start', minutesBefore: 0, text: `${what}: the recoat window is open` },
        { from: 'end', minutesBefore: rings, text: `${what}: the recoat window closes` },
      ],
    },
  ];
}
