import { z } from 'zod';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import { PULL_CHANGE_KINDS, type PullChangeKind, pullPlanSchema } from '@/lib/contracts/pull-plan';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { EXCLUSION_REASONS, type ExclusionReason } from '@/lib/pulltest/exclusion';
import { PULL_MODES, type PullMode } from '@/lib/pulltest/pull-mode';
import type { PullPlan } from '@/lib/pulltest/pull-plan';
import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';

/** A cup that specimens were set with. */
export interface SeriesMix {
  readonly id: string;
  readonly name: string;
  readonly position: number;
  readonly adhesiveMaterialId: string | null;
  readonly adhesiveLotCode: string;
  readonly sheet: AdhesiveSheet | null;
  readonly mixedAt: Instant | null;
  readonly setAt: Instant | null;
  readonly note: string;
  readonly batchMixId: string | null;
}

export interface SeriesSpecimen {
  readonly id: string;
  readonly code: string;
  readonly mixId: string;
  readonly condition: string;
  readonly depthMm: number;
  readonly pullOrder: number;
  /** Number of the piece in its batch; null for a coupon. */
  readonly piece: number | null;
  readonly anchorId: string | null;
  readonly setAt: Instant | null;
}

/** One reading as it stands now. */
export interface SeriesPull {
  readonly id: string;
  readonly specimenId: string;
  readonly number: number;
  readonly loadN: number | null;
  readonly isLowerBound: boolean;
  readonly mode: PullMode;
  readonly leftDamage: boolean;
  readonly angleDeg: number;
  readonly pulledAt: Instant;
  readonly recordedAt: Instant;
  readonly personId: string | null;
  readonly releasedAt: Instant | null;
  readonly cureHours: number | null;
  readonly scaleId: string | null;
  readonly scale: { readonly name: string; readonly greatestN: number; readonly checkedOn: string | null } | null;
  readonly exclusion: {
    readonly reason: ExclusionReason;
    readonly note: string;
    readonly personId: string | null;
    readonly at: Instant;
  } | null;
  readonly photoName: string | null;
  readonly photoType: string | null;
  readonly note: string;
}

export const SERIES_KINDS = ['design', 'acceptance'] as const;
export type SeriesKind = (typeof SERIES_KINDS)[number];

export interface PullSeries {
  readonly id: string;
  readonly name: string;
  readonly kind: SeriesKind;
  readonly plan: PullPlan;
  readonly batchId: string | null;
  readonly isClosed: boolean;
  readonly note: string;
  readonly version: number;
  readonly createdAt: Instant;
  /** In the order of the plan. */
  readonly mixes: readonly SeriesMix[];
  /** In the order of pulling. */
  readonly specimens: readonly SeriesSpecimen[];
  /** In the order they were written down. */
  readonly pulls: readonly SeriesPull[];
}

const kindSchema = z.enum(SERIES_KINDS);
const modeSchema = z.enum(PULL_MODES);
const reasonSchema = z.enum(EXCLUSION_REASONS);
const changeKindSchema = z.enum(PULL_CHANGE_KINDS);

type PullRow = NonNullable<Awaited<ReturnType<DbReader['pull']['findUnique']>>>;

function toPull(row: PullRow): SeriesPull {
  const { scaleName, scaleGreatestN, scaleCheckedOn, excludedReason, excludedNote, excludedAt } = row;
  return {
    id: row.id,
    specimenId: row.specimenId,
    number: row.number,
    loadN: row.loadN,
    isLowerBound: row.isLowerBound,
    mode: modeSchema.parse(row.mode),
    leftDamage: row.leftDamage,
    angleDeg: row.angleDeg,
    pulledAt: row.pulledAt.getTime(),
    recordedAt: row.recordedAt.getTime(),
    personId: row.personId,
    releasedAt: row.releasedAt?.getTime() ?? null,
    cureHours: row.cureHours,
    scaleId: row.scaleId,
    scale:
      scaleName === null || scaleGreatestN === null
        ? null
        : { name: scaleName, greatestN: scaleGreatestN, checkedOn: scaleCheckedOn },
    exclusion:
      excludedReason === null
        ? null
        : {
            reason: reasonSchema.parse(excludedReason),
            note: excludedNote,
            personId: row.excludedPersonId,
            at: excludedAt?.getTime() ?? 0,
          },
    photoName: row.photoName,
    photoType: row.photoType,
    note: row.note,
  };
}

/** A series with everything written down for it; null where there is none of this id. */
export async function findPullSeries(reader: DbReader, seriesId: string): Promise<PullSeries | null> {
  const row = await reader.pullSeries.findUnique({
    where: { id: seriesId },
    include: {
      mixes: { orderBy: { position: 'asc' } },
      specimens: { orderBy: { pullOrder: 'asc' }, include: { piece: { select: { number: true } } } },
      pulls: { orderBy: { number: 'asc' } },
    },
  });
  if (row === null) return null;
  return {
    id: row.id,
    name: row.name,
    kind: kindSchema.parse(row.kind),
    plan: pullPlanSchema.parse(row.plan),
    batchId: row.batchId,
    isClosed: row.status === 'closed',
    note: row.note,
    version: row.version,
    createdAt: row.createdAt.getTime(),
    mixes: row.mixes.map(({ seriesId: _, sheet, mixedAt, setAt, ...mix }) => ({
      ...mix,
      sheet: sheetOf(sheet),
      mixedAt: mixedAt?.getTime() ?? null,
      setAt: setAt?.getTime() ?? null,
    })),
    specimens: row.specimens.map(({ id, code, mixId, condition, depthMm, pullOrder, piece, anchorId, setAt }) => ({
      id,
      code,
      mixId,
      condition,
      depthMm,
      pullOrder,
      piece: piece?.number ?? null,
      anchorId,
      setAt: setAt?.getTime() ?? null,
    })),
    pulls: row.pulls.map(toPull),
  };
}

/** A sheet that this version does not know is no sheet: the pull is then marked as not judged. */
function sheetOf(sheet: unknown): AdhesiveSheet | null {
  const parsed = adhesiveSheetSchema.safeParse(sheet);
  return parsed.success ? parsed.data : null;
}

/** A line of the list of series. */
export interface PullSeriesLine {
  readonly id: string;
  readonly name: string;
  readonly kind: SeriesKind;
  readonly isClosed: boolean;
  readonly createdAt: Instant;
  readonly specimens: number;
  readonly pulls: number;
  readonly conditions: readonly string[];
}

/** One page of series, the open ones first and the newest first among them. */
export async function listPullSeries(
  reader: DbReader,
  { page, pageSize }: { readonly page: number; readonly pageSize: number },
): Promise<{ lines: PullSeriesLine[]; total: number }> {
  const total = await reader.pullSeries.count();
  const rows = await reader.pullSeries.findMany({
    // "open" before "closed".
    orderBy: [{ status: 'desc' }, { createdAt: 'desc' }, { id: 'asc' }],
    skip: page * pageSize,
    take: pageSize,
    select: {
      id: true,
      name: true,
      kind: true,
      status: true,
      plan: true,
      createdAt: true,
      _count: { select: { specimens: true, pulls: true } },
    },
  });
  const lines = rows.map(({ id, name, kind, status, plan, createdAt, _count }) => ({
    id,
    name,
    kind: kindSchema.parse(kind),
    isClosed: status === 'closed',
    createdAt: createdAt.getTime(),
    ..._count,
    conditions: pullPlanSchema.parse(plan).conditions.map((condition) => condition.name),
  }));
  return { lines, total };
}

/** An entry of a series' history. */
export interface PullChange {
  readonly number: number;
  readonly pullId: string | null;
  readonly at: Instant;
  readonly personId: string | null;
  readonly kind: PullChangeKind;
  readonly before: unknown;
  readonly after: unknown;
}

/** The newest entries of a series' history, newest first. */
export async function listPullChanges(reader: DbReader, seriesId: string, most: number): Promise<PullChange[]> {
  const rows = await reader.pullChange.findMany({ where: { seriesId }, orderBy: { number: 'desc' }, take: most });
  return rows.map(({ number, pullId, at, personId, kind, before, after }) => ({
    number,
    pullId,
    at: at.getTime(),
    personId,
    kind: changeKindSchema.parse(kind),
    before,
    after,
  }));
}

export interface NewPullChange {
  readonly kind: PullChangeKind;
  readonly pullId?: string;
  readonly at: Instant;
  readonly personId: string | null;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** Appends to a series' history and raises its version. Whoever writes to a series calls it, in the same transaction. */
export async function appendPullChange(tx: Tx, seriesId: string, change: NewPullChange): Promise<void> {
  const { kind, pullId, at, personId, before, after } = change;
  const last = await tx.pullChange.findFirst({
    where: { seriesId },
    orderBy: { number: 'desc' },
    select: { number: true },
  });
  await tx.pullChange.create({
    data: {
      seriesId,
      number: (last?.number ?? 0) + 1,
      kind,
      pullId: pullId ?? null,
      at: new Date(at),
      personId,
      ...(before === undefined ? {} : { before: json(before) }),
      ...(after === undefined ? {} : { after: json(after) }),
    },
  });
  await tx.pullSeries.update({ where: { id: seriesId }, data: { version: { increment: 1 } } });
}

/** Plain JSON, without what JSON does not know. */
export function json(value: unknown) {
  return JSON.parse(JSON.stringify(value));
}
