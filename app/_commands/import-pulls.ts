import { type IntakeRow, type IntakeSeries, pullIntake } from '@/lib/exchange/pull-intake';
import type { PullRow } from '@/lib/exchange/pull-row';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { findSheetMaterial } from '@/prisma/data/mix-materials';
import { appendPullChange, findPullSeries, json, type PullSeries } from '@/prisma/data/pull-series';
import { getShop } from '@/prisma/data/shop';
import { sha256 } from '../_server/digest';
import { pullClocks } from '../_server/pull-clock';
import type { Refusal } from './command-result';

export interface ImportPullsRequest {
  readonly seriesId: string;
  readonly rows: readonly PullRow[];
  readonly fileName: string;
  readonly personId: string | null;
  readonly now: Instant;
}

export type ImportPullsResult =
  | { readonly ok: true; readonly taken: readonly IntakeRow[] }
  | Refusal<'no-series' | 'series-closed' | 'too-many' | 'of-a-batch'>;

/** More than this many specimens is no series. Chosen: four times the largest plan. */
const MOST_SPECIMENS = 2_000;

/** A series as rows of a file are matched with it. */
export function intakeSeries({ plan, mixes, specimens, pulls }: PullSeries): IntakeSeries {
  const mixNames = new Map(mixes.map(({ id, name }) => [id, name]));
  const codes = new Map(specimens.map(({ id, code }) => [id, code]));
  return {
    conditions: plan.conditions.map(({ name }) => name),
    mixes: mixes.map(({ name }) => name),
    specimens: specimens.map(({ code, mixId, condition, depthMm }) => {
      return { code, mix: mixNames.get(mixId) ?? '', condition, depthMm };
    }),
    pulls: pulls.map(({ specimenId, loadN, mode, pulledAt }) => {
      return { code: codes.get(specimenId) ?? '', loadN, mode, pulledAt };
    }),
  };
}

/**
 * Takes the rows of a file into a series, all that can be or none: pulls that are known already are left, specimens and
 * mixes that it adds are made. A pull without a time is written down as made now; one before its release is marked.
 */
export async function importPulls(database: Db, request: ImportPullsRequest): Promise<ImportPullsResult> {
  const { seriesId, rows, now } = request;
  const seen = await findPullSeries(database, seriesId);
  if (seen === null) return NO_SERIES;
  const clockOf = await pullClocks(database, await getShop(database), seen, now);
  return writeTx(
    database,
    async (tx): Promise<ImportPullsResult> => {
      const series = await findPullSeries(tx, seriesId);
      if (series === null) return NO_SERIES;
      if (series.isClosed) {
        return { ok: false, code: 'series-closed', message: 'This series is closed. Reopen it first.' };
      }
      const taken = pullIntake(intakeSeries(series), rows, now);
      const added = taken.flatMap((one) => (one.kind === 'new' && one.specimen.isNew ? [one.specimen] : []));
      if (added.length > 0 && series.kind === 'acceptance') {
        const message = 'The file names specimens that are not among the pieces drawn. Nothing was taken in.';
        return { ok: false, code: 'of-a-batch', message };
      }
      if (series.specimens.length + added.length > MOST_SPECIMENS) {
        const message = `A series has at most ${MOST_SPECIMENS} specimens. Nothing was taken in.`;
        return { ok: false, code: 'too-many', message };
      }
      await addSpecimens(tx, series, added);
      const whole = await findPullSeries(tx, seriesId);
      await insertPulls(tx, whole ?? series, request, taken, clockOf);
      return { ok: true, taken };
    },
    { timeoutMs: 60_000 },
  );
}

const NO_SERIES: ImportPullsResult = {
  ok: false,
  code: 'no-series',
  message: 'This series is not there any more.',
};

type Added = Extract<IntakeRow, { kind: 'new' }>['specimen'];

async function addSpecimens(tx: Tx, series: PullSeries, added: readonly Added[]): Promise<void> {
  const once = [...new Map(added.map((specimen) => [specimen.code, specimen])).values()];
  const mixIds = new Map(series.mixes.map(({ id, name }) => [name, id]));
  const glueOf = new Map(series.plan.conditions.map(({ name, adhesiveMaterialId }) => [name, adhesiveMaterialId]));
  for (const { mix: name, condition } of once) {
    if (mixIds.has(name)) continue;
    const adhesiveMaterialId = glueOf.get(condition) ?? null;
    const sheet =
      adhesiveMaterialId === null ? null : ((await findSheetMaterial(tx, adhesiveMaterialId))?.sheet ?? null);
    const { id } = await tx.pullMix.create({
      data: {
        seriesId: series.id,
        name,
        position: mixIds.size,
        adhesiveMaterialId,
        adhesiveLotCode: '',
        note: '',
        ...(sheet === null ? {} : { sheet: json(sheet) }),
      },
    });
    mixIds.set(name, id);
  }
  const last = series.specimens.at(-1)?.pullOrder ?? 0;
  for (const [index, { code, mix, condition, depthMm }] of once.entries()) {
    await tx.pullSpecimen.create({
      data: {
        seriesId: series.id,
        code,
        mixId: mixIds.get(mix) ?? '',
        condition,
        depthMm,
        pullOrder: last + 1 + index,
      },
    });
  }
}

async function insertPulls(
  tx: Tx,
  series: PullSeries,
  { fileName, personId, now }: ImportPullsRequest,
  taken: readonly IntakeRow[],
  clockOf: Awaited<ReturnType<typeof pullClocks>>,
): Promise<void> {
  const byCode = new Map(series.specimens.map((specimen) => [specimen.code, specimen]));
  let number = series.pulls.at(-1)?.number ?? 0;
  const fresh = taken.flatMap((one) => (one.kind === 'new' ? [one] : []));
  for (const { row, specimen: named } of fresh) {
    const specimen = byCode.get(named.code);
    if (specimen === undefined) throw new Error(`specimen ${named.code} was lost on the way`);
    number += 1;
    const pulledAt = row.pulledAt ?? now;
    const clock = clockOf(specimen, pulledAt);
    await tx.pull.create({
      data: {
        key: `file-${sha256(`${series.id} ${specimen.code} ${number} ${row.loadN} ${row.mode} ${pulledAt}`).slice(0, 40)}`,
        seriesId: series.id,
        specimenId: specimen.id,
        number,
        loadN: row.loadN,
        isLowerBound: row.isLowerBound,
        mode: row.mode,
        leftDamage: false,
        angleDeg: row.angleDeg ?? 0,
        pulledAt: new Date(pulledAt),
        recordedAt: new Date(now),
        personId,
        releasedAt: clock.releasedAt === null ? null : new Date(clock.releasedAt),
        cureHours: clock.cureHours,
        excludedNote: '',
        note: row.note.slice(0, 1_000),
      },
    });
  }
  if (fresh.length === 0) return;
  await appendPullChange(tx, series.id, {
    kind: 'imported',
    at: now,
    personId,
    after: { fileName, pulls: fresh.length },
  });
}
