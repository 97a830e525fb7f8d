import type { DbReader } from '@/prisma/client';

export type BatchStatus = 'open' | 'finished';

/** A batch without its history: what a list shows, and the version (`lastSeq`) of everything computed from its events. */
export interface BatchHead {
  readonly id: string;
  readonly number: number;
  readonly revisionId: string;
  readonly modelId: string;
  readonly modelName: string;
  readonly letter: string;
  readonly quantity: number;
  readonly status: BatchStatus;
  readonly lastSeq: number;
  /** Calendar day YYYY-MM-DD. */
  readonly dueOn: string | null;
  /** The plan begins nothing of it before this day. */
  readonly releaseOn: string | null;
  /** What a day late costs beside other batches. */
  readonly weight: number;
  readonly orderNote: string;
  readonly openedAt: number;
  readonly finishedAt: number | null;
}

const HEAD_COLUMNS = {
  id: true,
  number: true,
  revisionId: true,
  quantity: true,
  status: true,
  lastSeq: true,
  dueOn: true,
  releaseOn: true,
  weight: true,
  orderNote: true,
  openedAt: true,
  finishedAt: true,
} as const;

interface HeadRow {
  id: string;
  number: number;
  revisionId: string;
  quantity: number;
  status: string;
  lastSeq: number;
  dueOn: string | null;
  releaseOn: string | null;
  weight: number;
  orderNote: string;
  openedAt: Date;
  finishedAt: Date | null;
}

/** Most ids in one query: both engines take that many parameters. */
const CHUNK = 500;

/** Splits a list so that each part fits into one query. */
export function chunked<T>(items: readonly T[], size: number = CHUNK): T[][] {
  const parts: T[][] = [];
  for (let start = 0; start < items.length; start += size) parts.push(items.slice(start, start + size));
  return parts;
}

async function withNames(reader: DbReader, rows: readonly HeadRow[]): Promise<BatchHead[]> {
  const names = new Map<string, { modelId: string; modelName: string; letter: string }>();
  for (const ids of chunked([...new Set(rows.map((row) => row.revisionId))])) {
    const revisions = await reader.revision.findMany({
      where: { id: { in: ids } },
      select: { id: true, letter: true, model: { select: { id: true, name: true } } },
    });
    for (const { id, letter, model } of revisions) names.set(id, { modelId: model.id, modelName: model.name, letter });
  }
  return rows.map((row) => {
    const name = names.get(row.revisionId);
    if (name === undefined) throw new Error(`batch ${row.id} names a revision that is not there`);
    return {
      ...row,
      ...name,
      status: row.status === 'finished' ? 'finished' : 'open',
      openedAt: row.openedAt.getTime(),
      finishedAt: row.finishedAt?.getTime() ?? null,
    };
  });
}

/** One batch, or null when there is none of that id. */
export async function findBatchHead(reader: DbReader, batchId: string): Promise<BatchHead | null> {
  const row = await reader.batch.findUnique({ where: { id: batchId }, select: HEAD_COLUMNS });
  if (row === null) return null;
  const [head] = await withNames(reader, [row]);
  return head ?? null;
}

/** All open batches, oldest number first. */
export async function listOpenBatchHeads(reader: DbReader): Promise<BatchHead[]> {
  const rows = await reader.batch.findMany({
    where: { status: 'open' },
    select: HEAD_COLUMNS,
    orderBy: { number: 'asc' },
  });
  return withNames(reader, rows);
}

export interface BatchSearch {
  readonly status: BatchStatus;
  /** Words of the maker: a batch number, a part of a model's name or of an order note. Empty: all. */
  readonly text: string;
  /** From 0. */
  readonly page: number;
  readonly pageSize: number;
}

/** One page of batches, newest number first, and how many there are in all. */
export async function listBatchPage(
  reader: DbReader,
  { status, text, page, pageSize }: BatchSearch,
): Promise<{ heads: BatchHead[]; total: number }> {
  const where = { status, ...(text === '' ? {} : { OR: await searchTerms(reader, text) }) };
  const total = await reader.batch.count({ where });
  const rows = await reader.batch.findMany({
    where,
    select: HEAD_COLUMNS,
    orderBy: { number: 'desc' },
    skip: page * pageSize,
    take: pageSize,
  });
  return { heads: await withNames(reader, rows), total };
}

/** Upper and lower case count as the same: `contains` alone differs between the two engines. */
async function searchTerms(reader: DbReader, text: string) {
  const folded = text.toLocaleLowerCase('en');
  const number = /^#?\d{1,9}$/.test(text) ? [{ number: Number(text.replace('#', '')) }] : [];
  const models = await reader.model.findMany({ select: { id: true, name: true } });
  const modelIds = models.filter((model) => model.name.toLocaleLowerCase('en').includes(folded)).map(({ id }) => id);
  const pattern = `%${folded.replace(/[\\%_]/g, (character) => `\\${character}`)}%`;
  const noted = await reader.$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "Batch" WHERE lower("orderNote") LIKE ${pattern} ESCAPE '\\' ORDER BY "number" DESC LIMIT ${CHUNK}`;
  return [
    ...number,
    ...chunked(modelIds).map((ids) => ({ revision: { modelId: { in: ids } } })),
    { id: { in: noted.map((row) => row.id) } },
  ];
}

/** Number for the next batch. Call it inside `writeTx`, where nobody else opens one. */
export async function nextBatchNumber(reader: DbReader): Promise<number> {
  const { _max } = await reader.batch.aggregate({ _max: { number: true } });
  return (_max.number ?? 0) + 1;
}
