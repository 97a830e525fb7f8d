import { leavesWhole, modeMeaning, type PullQuestion } from '@/lib/pulltest/pull-mode';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { HOUR_MS } from '@/lib/units/instant';

/** Why a pull is not among the readings. */
export const OUT_REASONS = [
  'excluded',
  'early',
  'at-angle',
  'pulled-before',
  'pulled-again',
  'no-load',
  'scale-failed',
  'implausible',
] as const;
export type OutReason = (typeof OUT_REASONS)[number];

/** What to keep in mind about a pull, whether it counts or not. */
export const PULL_MARKS = [
  'release-not-known',
  'topped-out',
  'scale-not-named',
  'scale-not-checked',
  'fell-out',
] as const;
export type PullMark = (typeof PULL_MARKS)[number];

export type PullUse =
  | { readonly kind: 'exact' | 'at-least'; readonly loadN: number }
  /** It came out by hand: a reading of nothing, of which no logarithm can be taken and which must not be dropped. */
  | { readonly kind: 'fell-out' }
  | { readonly kind: 'out'; readonly reason: OutReason };

export interface JudgedPull {
  readonly record: PullRecord;
  readonly use: PullUse;
  readonly marks: readonly PullMark[];
}

/** Steeper than this a pull is no straight pull. Chosen: cos 10 degrees is within 2 %. */
export const STRAIGHT_WITHIN_DEG = 10;
/** A scale checked longer ago than this is marked. Chosen: half a year. */
export const CHECK_GOOD_FOR_MS = 183 * 24 * HOUR_MS;
/** Loads and depths outside are slips of the pen. Chosen: far outside anything a lure is pulled with. */
const PLAUSIBLE_N = { least: 0.1, greatest: 50_000 } as const;
const PLAUSIBLE_MM = { least: 0.5, greatest: 500 } as const;

export interface JudgeOptions {
  readonly question: PullQuestion;
  /** Take excluded and early pulls as if nothing spoke against them, for the comparison with and without. */
  readonly withExcluded?: boolean;
}

/**
 * What every pull of a series says. Nothing is dropped: a pull that does not count says why. Several pulls of one
 * specimen count once: the first that broke or damaged it, else the highest that it held; in the order given where the
 * times are the same.
 */
export function judgePulls(records: readonly PullRecord[], options: JudgeOptions): JudgedPull[] {
  const bySpecimen = new Map<string, PullRecord[]>();
  for (const record of records) {
    const pulls = bySpecimen.get(record.specimenId);
    if (pulls === undefined) bySpecimen.set(record.specimenId, [record]);
    else pulls.push(record);
  }
  const counting = new Map([...bySpecimen].map(([specimen, pulls]) => [specimen, countingPull(pulls)]));
  return records.map((record) => {
    const one = counting.get(record.specimenId);
    const use: PullUse =
      one === undefined || one.id === record.id
        ? readingOf(record, options)
        : { kind: 'out', reason: brokeIt(one) && record.pulledAt >= one.pulledAt ? 'pulled-before' : 'pulled-again' };
    return { record, use, marks: marksOf(record) };
  });
}

/** The pull that is the specimen's reading. */
function countingPull(pulls: readonly PullRecord[]): PullRecord | undefined {
  const broke = [...pulls].sort((a, b) => a.pulledAt - b.pulledAt).find(brokeIt);
  if (broke !== undefined) return broke;
  const believed = (pull: PullRecord) => (pull.mode === 'scale-failed' ? -1 : (pull.loadN ?? 0));
  const [first, ...others] = pulls;
  if (first === undefined) return undefined;
  return others.reduce((most, pull) => (believed(pull) > believed(most) ? pull : most), first);
}

/** Something in the specimen gave way: whatever it is pulled to afterwards is no strength of a sound joint. */
function brokeIt({ mode, leftDamage }: PullRecord): boolean {
  return leftDamage || !leavesWhole(mode);
}

function readingOf(record: PullRecord, { question, withExcluded = false }: JudgeOptions): PullUse {
  const { loadN, mode, embedmentMm } = record;
  if (mode === 'scale-failed') return { kind: 'out', reason: 'scale-failed' };
  if (loadN === null || Number.isNaN(loadN)) return { kind: 'out', reason: 'no-load' };
  if (!withExcluded && record.exclusion !== null) return { kind: 'out', reason: 'excluded' };
  if (!withExcluded && isEarly(record)) return { kind: 'out', reason: 'early' };
  if (!(Math.abs(record.angleDeg) <= STRAIGHT_WITHIN_DEG)) return { kind: 'out', reason: 'at-angle' };
  if (!(embedmentMm >= PLAUSIBLE_MM.least && embedmentMm <= PLAUSIBLE_MM.greatest)) {
    return { kind: 'out', reason: 'implausible' };
  }
  const meaning = record.leftDamage && leavesWhole(mode) ? 'exact' : modeMeaning(mode, question);
  if (loadN === 0 && meaning === 'exact') return { kind: 'fell-out' };
  if (!(loadN >= PLAUSIBLE_N.least && loadN <= PLAUSIBLE_N.greatest)) return { kind: 'out', reason: 'implausible' };
  const isBound = meaning !== 'exact' || record.isLowerBound || isToppedOut(record);
  return { kind: isBound ? 'at-least' : 'exact', loadN };
}

/** Pulled before it was sure to be cured. */
export function isEarly({ pulledAt, releasedAt }: Pick<PullRecord, 'pulledAt' | 'releasedAt'>): boolean {
  return releasedAt !== null && pulledAt < releasedAt;
}

function isToppedOut({ loadN, scale }: PullRecord): boolean {
  return scale !== null && loadN !== null && loadN >= scale.greatestN;
}

function marksOf(record: PullRecord): PullMark[] {
  const marks: PullMark[] = [];
  if (record.releasedAt === null) marks.push('release-not-known');
  if (isToppedOut(record)) marks.push('topped-out');
  if (record.scale === null) marks.push('scale-not-named');
  else if (record.scale.checkedAt === null || record.pulledAt - record.scale.checkedAt > CHECK_GOOD_FOR_MS) {
    marks.push('scale-not-checked');
  }
  if (record.loadN === 0) marks.push('fell-out');
  return marks;
}
