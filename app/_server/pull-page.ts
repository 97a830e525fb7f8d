import 'server-only';
import { pieceText } from '@/lib/batch/batch-words';
import { type PullAnalysis, pullAnalyses } from '@/lib/pulltest/pull-analysis';
import { goalOfPlan } from '@/lib/pulltest/pull-plan';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import type { PullWords } from '@/lib/pulltest/pull-words';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';
import type { DbReader } from '@/prisma/client';
import { findMixPieces } from '@/prisma/data/batch-mixes';
import type { PullSeries } from '@/prisma/data/pull-series';
import { sha256 } from './digest';
import { pullRecords } from './pull-records';

/** The names of a series' mixes, pulls and pieces, for sentences about it. */
export async function pullWordsOf(reader: DbReader, series: PullSeries): Promise<PullWords> {
  const batchMixes = await findMixPieces(
    reader,
    series.mixes.flatMap(({ batchMixId }) => batchMixId ?? []),
  );
  const mixes = new Map(series.mixes.map((mix) => [mix.id, mix]));
  const codes = new Map(series.specimens.map(({ id, code }) => [id, code]));
  const specimens = new Map(series.pulls.map((pull) => [pull.id, codes.get(pull.specimenId) ?? '']));
  const batchMixOf = (mixId: string) => batchMixes.get(mixes.get(mixId)?.batchMixId ?? '');
  return {
    mix: (mixId) => {
      const batch = batchMixOf(mixId);
      const name = mixes.get(mixId)?.name ?? '';
      if (batch === undefined) return `mix ${name}`;
      const known = `mix ${batch.number} of batch ${batch.batchNumber}`;
      return series.kind === 'acceptance' ? known : `mix ${name} (${known})`;
    },
    pull: (pullId) => specimens.get(pullId) ?? 'a pull that is not there',
    pieces: (mixId) => {
      const batch = batchMixOf(mixId);
      if (batch === undefined || batch.pieces.length === 0) return null;
      return `${pieceText(batch.pieces)} of batch ${batch.batchNumber}`;
    },
  };
}

/** Everything that is computed about a series' pulls. */
export interface AnalysedSeries {
  readonly records: readonly PullRecord[];
  readonly analyses: readonly PullAnalysis[];
  readonly goal: SeriesGoal;
  readonly words: PullWords;
}

/** A series analysed, each of its conditions by itself; `depthMm`: where with and without are compared. */
export async function analysedSeries(
  reader: DbReader,
  series: PullSeries,
  depthMm: number | null = null,
): Promise<AnalysedSeries> {
  const records = pullRecords(series);
  const goal = goalOfPlan(series.plan, sha256, depthMm);
  const analyses = pullAnalyses(records, series.plan.question, goal);
  return { records, analyses, goal, words: await pullWordsOf(reader, series) };
}
