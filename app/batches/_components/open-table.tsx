import { sentence } from '@/app/_bench/bench-lists';
import { batchWords } from '@/app/_server/batch-words';
import { knownBatches } from '@/app/_server/known-batches';
import { dayText } from '@/app/_ui/day-text';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { statusText } from '@/lib/batch/describe-status';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { BatchEvaluation, StageGroup } from '@/lib/batch/evaluation';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import type { BatchHead } from '@/prisma/data/batches';
import type { ShopSettings } from '@/prisma/data/shop';
import { BatchName } from './finished-table';

export interface OpenTableProps {
  readonly database: Db;
  readonly shop: ShopSettings;
  readonly heads: readonly BatchHead[];
  readonly nowAt: Instant;
}

interface OpenRow {
  readonly head: BatchHead;
  readonly evaluation: BatchEvaluation;
  readonly hasRunningMix: boolean;
  readonly next: string;
}

/** Open batches with how far they are and what is next. */
export async function OpenTable({ database, shop, heads, nowAt }: OpenTableProps) {
  const { batches } = await knownBatches(database, shop, heads, nowAt);
  const rows = heads.flatMap((head, index): OpenRow[] => {
    const batch = batches[index];
    if (batch === undefined) return [];
    const evaluation = evaluateBatch(batch, nowAt);
    const words = batchWords(batch, shop, nowAt);
    const group = leading(evaluation);
    const next =
      group === null
        ? 'nothing left to do'
        : `${words.operation(group.operationId)} ${statusText(group.status, words)}`;
    return [
      { head, evaluation, hasRunningMix: batch.state.mixes.some((mix) => mix.closedAt === null), next: sentence(next) },
    ];
  });
  const columns: readonly Column<OpenRow>[] = [
    { id: 'name', title: 'Batch', cell: ({ head }) => <BatchName head={head} /> },
    {
      id: 'pieces',
      title: 'Pieces done',
      cell: ({ evaluation }) => `${evaluation.donePieces} of ${evaluation.livePieces}`,
      isNumber: true,
    },
    {
      id: 'next',
      title: 'Next',
      cell: ({ hasRunningMix, next }) => (
        <>
          {hasRunningMix && (
            <>
              <StatusMark status="running">Mix running</StatusMark>.{' '}
            </>
          )}
          {next}
        </>
      ),
    },
    { id: 'due', title: 'Due', cell: ({ head }) => (head.dueOn === null ? '' : dayText(head.dueOn)) },
    { id: 'note', title: 'Order note', cell: ({ head }) => head.orderNote },
  ];
  return <Table caption="Open batches" columns={columns} rows={rows} rowKey={({ head }) => head.id} />;
}

const ORDER = ['window-closed', 'ready', 'not-judged', 'waits', 'blocked'] as const;

/** The group of pieces that tells best where a batch stands: what needs a hand first, then what waits. */
function leading({ groups }: BatchEvaluation): StageGroup | null {
  for (const kind of ORDER) {
    const found = groups.find(({ status }) => status.kind === kind);
    if (found !== undefined) return found;
  }
  return null;
}
