import { z } from 'zod';
import { HOLD_ENDS, type HoldEnd, RESOURCE_SHARES, type ResourceShare } from '@/lib/contracts/planning-forms';
import type { DbReader, Tx } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';

/** What the plan knows of an operation of a route beside its minutes. */
export interface OperationPlanning {
  readonly operationId: string;
  readonly setUpMinutes: number;
  /** A person, else a skill, else anyone. */
  readonly personId: string | null;
  readonly skill: string | null;
  /** May be put down and taken up again in pieces of at least this; null: in one go. */
  readonly leastPieceMinutes: number | null;
  /** Most pieces of the batch in one visit or one mix. */
  readonly mostPieces: number | null;
  readonly resourceId: string | null;
  readonly resourceShare: ResourceShare;
  readonly holdsUntil: HoldEnd;
  /** Minutes a piece to make good a recoat window that was missed; null: it must be met. */
  readonly remedyMinutes: number | null;
  /** Of the pieces that come to it, spoilt at it; null: nothing is said. */
  readonly spoiltPercent: number | null;
}

const shareSchema = z.enum(RESOURCE_SHARES);
const holdSchema = z.enum(HOLD_ENDS);

/** What is known of the operations of these revisions, by operation id. Operations nobody has said anything of are absent. */
export async function listOperationPlanning(
  reader: DbReader,
  revisionIds: readonly string[],
): Promise<Map<string, OperationPlanning>> {
  const found = new Map<string, OperationPlanning>();
  for (const ids of chunked(revisionIds)) {
    const rows = await reader.operationPlanning.findMany({ where: { operation: { revisionId: { in: ids } } } });
    for (const row of rows) {
      const { resourceShare, holdsUntil, ...rest } = row;
      const share = shareSchema.parse(resourceShare);
      found.set(row.operationId, { ...rest, resourceShare: share, holdsUntil: holdSchema.parse(holdsUntil) });
    }
  }
  return found;
}

/** Puts rows in the place of those of their operations. */
export async function saveOperationPlanning(tx: Tx, rows: readonly OperationPlanning[]): Promise<void> {
  for (const ids of chunked(rows.map((row) => row.operationId))) {
    await tx.operationPlanning.deleteMany({ where: { operationId: { in: ids } } });
  }
  for (const data of chunked(rows)) await tx.operationPlanning.createMany({ data });
}
