import { randomUUID } from 'node:crypto';
import type { OpenBatchInput } from '@/lib/contracts/open-batch';
import type { SpecReport } from '@/lib/spec/spec-report';
import { takenFindings } from '@/lib/spec/taken-findings';
import type { Instant } from '@/lib/units/instant';
import { type Db, type DbReader, type Tx, writeTx } from '@/prisma/client';
import { appendEvent } from '@/prisma/data/batch-events';
import { findRevisionRoute, type RevisionRoute } from '@/prisma/data/batch-plan';
import { chunked, nextBatchNumber } from '@/prisma/data/batches';
import { judgeRevision } from '@/prisma/data/spec-reports';

export type OpenBatchResult =
  | {
      readonly ok: true;
      readonly batchId: string;
      readonly number: number;
      /** The revision was a draft and is frozen from now on. */
      readonly hasFrozen: boolean;
    }
  | {
      readonly ok: false;
      readonly code: 'no-revision' | 'route-not-ready' | 'key-reused';
      readonly message: string;
      readonly details: readonly string[];
    };

export interface OpenBatchRequest extends OpenBatchInput {
  readonly personId: string | null;
  readonly now: Instant;
}

/**
 * Opens a batch of a model revision: pieces, joints and the first event of its history, and freezes the revision when
 * it was still a draft. It takes along what the rules find of the revision now. Sent again with the same `batchId` it opens nothing and answers as the first time.
 */
export async function openBatch(database: Db, request: OpenBatchRequest): Promise<OpenBatchResult> {
  const judged = await judgedRevision(database, request);
  return writeTx(database, async (tx) => {
    const existing = await tx.batch.findUnique({ where: { id: request.batchId } });
    if (existing !== null) {
      if (existing.revisionId !== request.revisionId || existing.quantity !== request.quantity) {
        return refusal('key-reused', 'This form was sent before with other values. Open the form anew.');
      }
      return { ok: true, batchId: existing.id, number: existing.number, hasFrozen: false };
    }
    const route = await findRevisionRoute(tx, request.revisionId);
    if (route === null) return refusal('no-revision', 'This model revision is not there any more. Choose another.');
    const faults = routeFaults(route);
    if (faults.length > 0) {
      return refusal('route-not-ready', 'The route of this revision is not ready for the bench.', faults);
    }
    // Judged before the transaction, which must be short; judged again where the draft was changed in between.
    const isStale = judged.updatedAt !== (await updatedAt(tx, request.revisionId));
    const { report } = isStale ? await judgedRevision(tx, request) : judged;
    const now = new Date(request.now);
    if (!route.isFrozen) {
      await tx.revision.update({ where: { id: request.revisionId }, data: { frozenAt: now, updatedAt: now } });
    }
    const number = await insertBatch(tx, request, route, report);
    return { ok: true, batchId: request.batchId, number, hasFrozen: !route.isFrozen };
  });
}

/** What the rules find of the revision, and as of which change of it. */
async function judgedRevision(reader: DbReader, { revisionId, now }: OpenBatchRequest) {
  return { updatedAt: await updatedAt(reader, revisionId), report: await judgeRevision(reader, revisionId, now) };
}

async function updatedAt(reader: DbReader, id: string): Promise<number | null> {
  const row = await reader.revision.findUnique({ where: { id }, select: { updatedAt: true } });
  return row?.updatedAt.getTime() ?? null;
}

function refusal(
  code: Extract<OpenBatchResult, { ok: false }>['code'],
  message: string,
  details: readonly string[] = [],
): OpenBatchResult {
  return { ok: false, code, message, details };
}

/** What a frozen route could never make good: each as one sentence that says what to do. */
function routeFaults({ plan }: RevisionRoute): string[] {
  if (plan.operations.length === 0) return ['It has no operations. Add them to the route in Models.'];
  return plan.operations
    .filter((operation) => operation.kind !== 'work' && operation.materialId === null)
    .map((operation) => `"${operation.name}" names no adhesive or coating. Choose it in Models.`);
}

async function insertBatch(
  tx: Tx,
  request: OpenBatchRequest,
  { plan }: RevisionRoute,
  report: SpecReport | null,
): Promise<number> {
  const { batchId, revisionId, quantity, dueOn, orderNote, personId, now } = request;
  const number = await nextBatchNumber(tx);
  await tx.batch.create({
    data: {
      id: batchId,
      number,
      revisionId,
      quantity,
      status: 'open',
      lastSeq: 0,
      dueOn,
      orderNote,
      openedAt: new Date(now),
      // Only plain JSON values are in findings.
      ...(report === null ? {} : { findings: JSON.parse(JSON.stringify(takenFindings(report))) }),
      rulesVersion: report?.rulesVersion ?? null,
    },
  });
  const pieces = Array.from({ length: quantity }, (_, index) => ({ id: randomUUID(), batchId, number: index + 1 }));
  for (const data of chunked(pieces)) await tx.piece.createMany({ data });
  const joints = pieces.flatMap((piece) => plan.anchors.map((anchor) => ({ pieceId: piece.id, anchorId: anchor.id })));
  for (const data of chunked(joints)) await tx.joint.createMany({ data });
  await appendEvent(tx, batchId, {
    seq: 1,
    key: `opened-${batchId}`,
    at: now,
    recordedAt: now,
    personId,
    body: { kind: 'batch-opened', quantity },
  });
  return number;
}
