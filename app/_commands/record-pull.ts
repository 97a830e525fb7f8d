import type { PullInput } from '@/lib/contracts/pull-forms';
import { type JudgedPull, judgePulls } from '@/lib/pulltest/judge-pulls';
import { leavesWhole } from '@/lib/pulltest/pull-mode';
import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { appendPullChange, findPullSeries, type PullSeries, type SeriesSpecimen } from '@/prisma/data/pull-series';
import { findScale } from '@/prisma/data/scales';
import { getShop } from '@/prisma/data/shop';
import { type PullClock, pullClocks } from '../_server/pull-clock';
import { pullRecords } from '../_server/pull-records';
import type { Refusal } from './command-result';
import { pullFault } from './pull-fault';

export interface RecordPullRequest {
  readonly seriesId: string;
  readonly specimenId: string;
  readonly input: Omit<PullInput, 'pulledAt'>;
  /** Null: now. */
  readonly pulledAt: Instant | null;
  readonly personId: string | null;
  readonly now: Instant;
}

export type RecordPullCode =
  | 'no-specimen'
  | 'series-closed'
  | 'key-reused'
  | 'early'
  | 'pulled-before'
  | 'no-load'
  | 'bound-of-nothing'
  | 'in-future'
  | 'too-old'
  | 'before-setting'
  | 'no-scale';

export type RecordPullResult =
  | {
      readonly ok: true;
      readonly pullId: string;
      /** The same pull was written down before under this key. */
      readonly isRepeat: boolean;
      /** What it counts as now. */
      readonly judged: JudgedPull;
    }
  | (Refusal<RecordPullCode> & { readonly clock?: PullClock });

/** Furthest back that a pull may be written down: a notebook of last season. Chosen. */
const LATEST_ENTRY_MS = 400 * 24 * HOUR_MS;

/**
 * Writes down one pull. Before its release a joint is not pulled: the maker is told from when on, and may insist; the
 * pull is then marked as early and does not count. A specimen that gave way before is not sound: pulled again, it is
 * written down as such. The same key counts once.
 */
export async function recordPull(database: Db, request: RecordPullRequest): Promise<RecordPullResult> {
  const { seriesId, specimenId, input, now } = request;
  const pulledAt = request.pulledAt ?? now;
  if (pulledAt > now) return refuse('in-future', 'This hour is still to come.', 'pulledAt');
  if (pulledAt < now - LATEST_ENTRY_MS) {
    return refuse('too-old', 'This is more than a year ago. Look at the year again.', 'pulledAt');
  }
  const seen = await findPullSeries(database, seriesId);
  if (seen === null) return refuse('no-specimen', 'This series is not there any more.');
  // The temperature is summed before the transaction, which must be short.
  const clockOf = await pullClocks(database, await getShop(database), seen, now);
  return writeTx(database, async (tx): Promise<RecordPullResult> => {
    const series = await findPullSeries(tx, seriesId);
    const specimen = series?.specimens.find(({ id }) => id === specimenId);
    if (series === null || specimen === undefined) {
      return refuse('no-specimen', 'This series has no such specimen. Reload the page.');
    }
    const repeat = await tx.pull.findUnique({ where: { key: input.key } });
    if (repeat !== null) {
      if (repeat.specimenId !== specimenId || repeat.loadN !== input.load || repeat.mode !== input.mode) {
        return refuse('key-reused', 'This form was sent before with other values. Open the specimen anew.');
      }
      return done(series, repeat.id, true);
    }
    const clock = clockOf(specimen, pulledAt);
    const fault = faultOf(series, specimen, request, pulledAt, clock);
    if (fault !== null) return fault;
    const scale = input.scaleId === null ? null : await findScale(tx, input.scaleId);
    if (input.scaleId !== null && scale === null) return refuse('no-scale', 'Choose a scale of the list.', 'scaleId');
    const pullId = await insertPull(tx, series, request, pulledAt, clock, scale);
    const after = await findPullSeries(tx, seriesId);
    return done(after ?? series, pullId, false);
  });
}

function refuse(code: RecordPullCode, message: string, field?: string, clock?: PullClock): RecordPullResult {
  return {
    ok: false,
    code,
    message,
    ...(field === undefined ? {} : { field }),
    ...(clock === undefined ? {} : { clock }),
  };
}

function done(series: PullSeries, pullId: string, isRepeat: boolean): RecordPullResult {
  const judged = judgePulls(pullRecords(series), { question: series.plan.question });
  const own = judged.find(({ record }) => record.id === pullId);
  if (own === undefined) throw new Error('a pull was lost on the way');
  return { ok: true, pullId, isRepeat, judged: own };
}

function faultOf(
  series: PullSeries,
  specimen: SeriesSpecimen,
  { input }: RecordPullRequest,
  pulledAt: Instant,
  clock: PullClock,
): RecordPullResult | null {
  if (series.isClosed) return refuse('series-closed', 'This series is closed. Reopen it first.');
  const wrong = pullFault(input);
  if (wrong !== null) return wrong;
  const mix = series.mixes.find(({ id }) => id === specimen.mixId);
  const setAt = specimen.setAt ?? mix?.setAt ?? mix?.mixedAt ?? null;
  if (setAt !== null && pulledAt < setAt) {
    return refuse('before-setting', 'That is before the specimen was set. Look at the hours again.', 'pulledAt');
  }
  if (clock.timing.kind === 'early' && !input.acceptsEarly) {
    const message =
      'It is not sure to be cured yet: a pull now says nothing of the joint. Wait, or tick that you pull it all the same; it is then marked and does not count.';
    return refuse('early', message, 'acceptsEarly', clock);
  }
  const broken = series.pulls.some(
    (pull) => pull.specimenId === specimen.id && (pull.leftDamage || !leavesWhole(pull.mode)),
  );
  if (broken && !input.acceptsAgain) {
    const message =
      'This specimen gave way in an earlier pull. Tick that you pulled it again; it is then marked and does not count.';
    return refuse('pulled-before', message, 'acceptsAgain');
  }
  return null;
}

async function insertPull(
  tx: Tx,
  series: PullSeries,
  { specimenId, input, personId, now }: RecordPullRequest,
  pulledAt: Instant,
  clock: PullClock,
  scale: Awaited<ReturnType<typeof findScale>>,
): Promise<string> {
  const { key, load, isLowerBound, mode, leftDamage, angleDeg, note } = input;
  const { id } = await tx.pull.create({
    data: {
      key,
      seriesId: series.id,
      specimenId,
      number: (series.pulls.at(-1)?.number ?? 0) + 1,
      loadN: load,
      isLowerBound,
      mode,
      leftDamage,
      angleDeg,
      pulledAt: new Date(pulledAt),
      recordedAt: new Date(now),
      personId,
      releasedAt: clock.releasedAt === null ? null : new Date(clock.releasedAt),
      cureHours: clock.cureHours,
      scaleId: scale?.id ?? null,
      scaleName: scale?.name ?? null,
      scaleGreatestN: scale?.greatestN ?? null,
      scaleCheckedOn: scale?.checkedOn ?? null,
      excludedNote: '',
      note,
    },
  });
  await appendPullChange(tx, series.id, { kind: 'pull-recorded', pullId: id, at: now, personId, after: input });
  return id;
}
