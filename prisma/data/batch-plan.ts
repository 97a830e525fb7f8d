import { z } from 'zod';
import { type BatchPlan, OPERATION_KINDS, type PlannedOperation, WAITS } from '@/lib/batch/plan';
import { type CautionTopic, cautionTopic } from '@/lib/contracts/caution-topic';
import type { DbReader } from '@/prisma/client';

/** The route of a revision: a batch's plan but for its quantity, with what only screens need. */
export interface RevisionRoute {
  readonly plan: Omit<BatchPlan, 'quantity'>;
  readonly isFrozen: boolean;
  readonly cautionByOperation: ReadonlyMap<string, CautionTopic>;
}

const positionsSchema = z.array(z.int());
const kindSchema = z.enum(OPERATION_KINDS);
const waitSchema = z.enum(WAITS);

/** The route of a revision, operations and anchors in their order; null when there is no such revision. */
export async function findRevisionRoute(reader: DbReader, revisionId: string): Promise<RevisionRoute | null> {
  const revision = await reader.revision.findUnique({
    where: { id: revisionId },
    select: {
      frozenAt: true,
      anchors: { select: { id: true, name: true, position: true }, orderBy: { position: 'asc' } },
      operations: {
        select: {
          id: true,
          name: true,
          kind: true,
          attendedMinutes: true,
          materialId: true,
          anchorPositions: true,
          caution: true,
          needs: { select: { afterOperationId: true, wait: true, afterOperation: { select: { position: true } } } },
        },
        orderBy: { position: 'asc' },
      },
    },
  });
  if (revision === null) return null;
  const operations = revision.operations.map((row): PlannedOperation => {
    const kind = kindSchema.parse(row.kind);
    const positions = new Set(positionsSchema.parse(row.anchorPositions));
    const anchors = revision.anchors.filter((anchor) => positions.size === 0 || positions.has(anchor.position));
    return {
      id: row.id,
      name: row.name,
      kind,
      attendedMinutes: row.attendedMinutes,
      materialId: row.materialId,
      anchorIds: kind === 'glue' ? anchors.map((anchor) => anchor.id) : [],
      needs: row.needs
        .toSorted((a, b) => a.afterOperation.position - b.afterOperation.position)
        .map((need) => ({ operationId: need.afterOperationId, wait: waitSchema.parse(need.wait) })),
    };
  });
  return {
    plan: { anchors: revision.anchors.map(({ id, name }) => ({ id, name })), operations },
    isFrozen: revision.frozenAt !== null,
    cautionByOperation: new Map(revision.operations.map((row) => [row.id, cautionTopic(row.caution)])),
  };
}
