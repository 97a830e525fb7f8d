import { takenFindingsSchema } from '@/lib/contracts/taken-findings';
import { specContext } from '@/lib/spec/spec-context';
import { type SpecReport, specReport } from '@/lib/spec/spec-report';
import type { TakenFindings } from '@/lib/spec/taken-findings';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { listSpecModels } from '@/prisma/data/spec-models';
import { type ReadSpecShop, readSpecShop } from '@/prisma/data/spec-shop';

/** What the rules find of one revision now; null when there is none of that id. */
export async function judgeRevision(reader: DbReader, revisionId: string, now: Instant): Promise<SpecReport | null> {
  return (await judgeRevisions(reader, [revisionId], now))[0] ?? null;
}

/** The same of several revisions; ids that name none are passed over. */
export async function judgeRevisions(
  reader: DbReader,
  revisionIds: readonly string[],
  now: Instant,
): Promise<SpecReport[]> {
  return judgeRevisionsIn(reader, revisionIds, await readSpecShop(reader, now));
}

/** The same in a shop that was read already. */
export async function judgeRevisionsIn(
  reader: DbReader,
  revisionIds: readonly string[],
  { shop, shelf }: ReadSpecShop,
): Promise<SpecReport[]> {
  const context = specContext(shop, { withFixes: true });
  return (await listSpecModels(reader, revisionIds, shelf)).map((model) => specReport(model, context));
}

/** A batch and what it took along; null: it was opened before there were rules. */
export interface BatchFindings {
  readonly batchId: string;
  readonly number: number;
  readonly revisionId: string;
  readonly taken: TakenFindings | null;
  readonly rulesVersion: number | null;
}

/** What a batch took along when it was opened; null when there is no such batch. */
export async function findBatchFindings(reader: DbReader, batchId: string): Promise<BatchFindings | null> {
  const row = await reader.batch.findUnique({ where: { id: batchId }, select: FINDINGS_COLUMNS });
  return row === null ? null : toBatchFindings(row);
}

/** The same of all open batches, oldest number first. */
export async function listOpenBatchFindings(reader: DbReader): Promise<BatchFindings[]> {
  const rows = await reader.batch.findMany({
    where: { status: 'open' },
    select: FINDINGS_COLUMNS,
    orderBy: { number: 'asc' },
  });
  return rows.map(toBatchFindings);
}

const FINDINGS_COLUMNS = { id: true, number: true, revisionId: true, findings: true, rulesVersion: true } as const;

interface FindingsRow {
  readonly id: string;
  readonly number: number;
  readonly revisionId: string;
  readonly findings: unknown;
  readonly rulesVersion: number | null;
}

function toBatchFindings({ id, findings, ...row }: FindingsRow): BatchFindings {
  return { batchId: id, ...row, taken: findings === null ? null : takenFindingsSchema.parse(findings) };
}
