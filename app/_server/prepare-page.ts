import 'server-only';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Db } from '@/prisma/client';
import { type BatchHead, findBatchHead } from '@/prisma/data/batches';
import { listMaterialNames } from '@/prisma/data/materials';
import { findSheetMaterial, listLotCodes } from '@/prisma/data/mix-materials';
import { findPreparation, type StoredPreparation } from '@/prisma/data/preparations';
import { findRevision, type Revision } from '@/prisma/data/revisions';

/** A batch as it is prepared, with the names its card needs. */
export interface PreparePage {
  readonly head: BatchHead;
  readonly revision: Revision;
  readonly stored: StoredPreparation | null;
  readonly sheets: ReadonlyMap<string, AdhesiveSheet>;
  readonly anchorName: (anchorId: string) => string;
  readonly operationName: (operationId: string) => string;
  readonly materialName: (materialId: string | null) => string;
  readonly lotCode: (lotId: string) => string;
}

/** What the pages of preparing show; null when there is no such batch. */
export async function loadPreparePage(database: Db, batchId: string): Promise<PreparePage | null> {
  const head = await findBatchHead(database, batchId);
  const revision = head === null ? null : await findRevision(database, head.revisionId);
  if (head === null || revision === null) return null;
  const stored = await findPreparation(database, batchId);
  const cards = stored?.body.cards ?? [];
  const cuts = stored?.body.cuts ?? [];
  const materialIds = [
    ...cards.flatMap(({ materialId }) => materialId ?? []),
    ...cuts.map(({ materialId }) => materialId),
  ];
  const names = await listMaterialNames(database, [...new Set(materialIds)]);
  const sheets = new Map<string, AdhesiveSheet>();
  for (const id of new Set(cards.flatMap(({ materialId }) => materialId ?? []))) {
    const sheet = (await findSheetMaterial(database, id))?.sheet;
    if (sheet !== null && sheet !== undefined) sheets.set(id, sheet);
  }
  const codes = await listLotCodes(
    database,
    cuts.flatMap(({ bars }) => bars.flatMap(({ stockId }) => stockId ?? [])),
  );
  const gone = 'no longer there';
  return {
    head,
    revision,
    stored,
    sheets,
    anchorName: (id) => revision.anchors.find((anchor) => anchor.id === id)?.name ?? gone,
    operationName: (id) => revision.operations.find((operation) => operation.id === id)?.name ?? gone,
    materialName: (id) => (id === null ? '' : (names.get(id) ?? gone)),
    lotCode: (id) => codes.get(id) ?? gone,
  };
}
