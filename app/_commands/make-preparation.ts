import { foldBatch } from '@/lib/batch/fold-batch';
import { bodyFromProfile } from '@/lib/geometry/body';
import { bodySolid } from '@/lib/geometry/body-solid';
import type { PrepareChoices } from '@/lib/prepare/preparation';
import { type BillCover, type OpenOperation, prepareBatch } from '@/lib/prepare/prepare-batch';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { listBatchEvents } from '@/prisma/data/batch-events';
import { findRevisionRoute } from '@/prisma/data/batch-plan';
import { findBatchHead } from '@/prisma/data/batches';
import { findSheetMaterial } from '@/prisma/data/mix-materials';
import { listWeighed, listWireLengths } from '@/prisma/data/preparations';
import { findRevision, type RevisionBillLine } from '@/prisma/data/revisions';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type MakePreparationResult = Done | Refusal<'no-batch'>;

const NO_BATCH: MakePreparationResult = {
  ok: false,
  code: 'no-batch',
  message: 'This batch is not there any more. Go back to Batches.',
};

/**
 * Plans the mixes and the cut list for what is still open of a batch, from the sheets, the stock and the choices of this
 * moment, and keeps them so that they can be ticked off. What was prepared before stays in the store.
 */
export function makePreparation(
  database: Db,
  batchId: string,
  choices: PrepareChoices,
  nowAt: Instant,
): Promise<MakePreparationResult> {
  return writeTx(database, async (tx): Promise<MakePreparationResult> => {
    const head = await findBatchHead(tx, batchId);
    const revision = head === null ? null : await findRevision(tx, head.revisionId);
    const route = head === null ? null : await findRevisionRoute(tx, head.revisionId);
    if (head === null || revision === null || route === null) return NO_BATCH;
    const plan = { ...route.plan, quantity: head.quantity };
    const { pieces } = foldBatch(plan, await listBatchEvents(tx, batchId, 0));
    const anchorsOf = (operationId: string) =>
      pieces[0]?.operations.find((own) => own.operationId === operationId)?.joints.map(({ anchorId }) => anchorId) ??
      [];
    const operations: OpenOperation[] = [];
    for (const operation of plan.operations) {
      if (operation.kind === 'work') continue;
      const open = pieces.flatMap((piece): OpenOperation['open'] => {
        const own = piece.operations.find(({ operationId }) => operationId === operation.id);
        if (piece.scrapped !== null || own === undefined || own.status === 'done') return [];
        if (own.joints.length === 0) return [{ piece: piece.number, anchorId: null }];
        return own.joints.flatMap((joint) =>
          joint.set === null ? [{ piece: piece.number, anchorId: joint.anchorId }] : [],
        );
      });
      const { id, kind, materialId } = operation;
      const sheet = await sheetOf(tx, materialId);
      const others = plan.operations.filter((other) => other.kind !== 'work' && other.materialId === materialId);
      const setsAnchorIds = [...new Set(others.flatMap((other) => anchorsOf(other.id)))];
      const shares = others.filter((other) => anchorsOf(other.id).length === 0).length;
      const cover = await coverOf(tx, materialId, revision.billLines, { setsAnchorIds, shares: Math.max(1, shares) });
      operations.push({ id, kind, materialId, sheet, cover, open });
    }
    const anchors = revision.anchors.map((anchor) => ({ ...anchor, wireMaterialId: anchor.wire?.id ?? null }));
    const body = bodyFromProfile(revision.profile, null);
    const preparation = prepareBatch(
      {
        anchors,
        operations,
        surfaceMm2: body.ok ? bodySolid(body.body).surfaceMm2 : null,
        bodyLengthMm: revision.lengthMm,
        weighed: await listWeighed(tx),
        lengths: await listWireLengths(
          tx,
          anchors.flatMap(({ wireMaterialId }) => (wireMaterialId === null ? [] : [wireMaterialId])),
        ),
      },
      choices,
    );
    const { _max } = await tx.preparation.aggregate({ where: { batchId }, _max: { number: true } });
    await tx.preparation.create({
      data: {
        batchId,
        number: (_max.number ?? 0) + 1,
        body: JSON.parse(JSON.stringify(preparation)),
        madeAt: new Date(nowAt),
      },
    });
    return DONE;
  });
}

async function sheetOf(tx: Tx, materialId: string | null) {
  return materialId === null ? null : ((await findSheetMaterial(tx, materialId))?.sheet ?? null);
}

/** A coating goes over the whole body; of a glue that sets no anchor the bill says how much a piece takes. */
async function coverOf(
  tx: Tx,
  materialId: string | null,
  bill: readonly RevisionBillLine[],
  shared: Pick<BillCover, 'setsAnchorIds' | 'shares'>,
): Promise<OpenOperation['cover']> {
  const kind = materialId === null ? null : (await tx.material.findUnique({ where: { id: materialId } }))?.kind;
  if (kind !== 'adhesive') return 'film';
  const lines = bill.filter(({ material, quantityUnit }) => material.id === materialId && quantityUnit === 'g');
  return { ...shared, perPieceG: lines.length === 0 ? null : lines.reduce((sum, { quantity }) => sum + quantity, 0) };
}
