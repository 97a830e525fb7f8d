import type { Tx } from '@/prisma/client';
import { anchorId, operationId } from './batch-story';
import type { DemoRevision } from './demo-model';
import { DEMO_MODELS } from './demo-models';
import { demoPlanning } from './demo-planning';
import { type DemoTimes, daysAgo } from './demo-times';

/** Writes the demo models with their frozen revisions, routes and bills. */
export async function insertModels(tx: Tx, times: DemoTimes): Promise<void> {
  for (const { id, name, note, revisions } of DEMO_MODELS) {
    const daysOld = Math.max(...revisions.map((revision) => revision.frozenDaysAgo)) + 3;
    await tx.model.create({ data: { id, name, note, createdAt: new Date(daysAgo(times, daysOld, '19:30')) } });
    for (const revision of revisions) await insertRevision(tx, times, id, revision);
  }
}

async function insertRevision(tx: Tx, times: DemoTimes, modelId: string, revision: DemoRevision): Promise<void> {
  const { id, letter, frozenDaysAgo, woodMaterialId, lengthMm, profile, lineLabelN, lineType, note } = revision;
  const frozenAt = new Date(daysAgo(times, frozenDaysAgo, '20:00'));
  await tx.revision.create({
    data: {
      id,
      modelId,
      letter,
      frozenAt,
      woodMaterialId,
      lengthMm,
      profile: profile.map(([xMm, halfHeightMm, halfWidthMm]) => ({ xMm, halfHeightMm, halfWidthMm })),
      lineLabelN,
      lineType,
      ballast: revision.ballast.map((item) => ({ ...item })),
      note,
      createdAt: new Date(daysAgo(times, frozenDaysAgo + 2, '19:40')),
      updatedAt: frozenAt,
    },
  });
  await tx.anchor.createMany({
    data: revision.anchors.map(({ key, ...anchor }, index) => ({
      ...anchor,
      id: anchorId(revision, key),
      revisionId: id,
      position: index + 1,
    })),
  });
  await tx.routeOperation.createMany({
    data: revision.route.map(({ key, needs: _needs, ...operation }, index) => ({
      ...operation,
      id: operationId(revision, key),
      revisionId: id,
      position: index + 1,
      anchorPositions: [],
    })),
  });
  await tx.operationPlanning.createMany({
    data: revision.route.map(({ key }) => demoPlanning(operationId(revision, key), key)),
  });
  await tx.operationNeed.createMany({
    data: revision.route.flatMap(({ key, needs }) =>
      needs.map(([afterKey, wait]) => ({
        id: `${operationId(revision, key)}-${afterKey}`,
        operationId: operationId(revision, key),
        afterOperationId: operationId(revision, afterKey),
        wait,
      })),
    ),
  });
  await tx.billLine.createMany({
    data: revision.bill.map(([materialId, quantity, quantityUnit, lineNote], index) => ({
      id: `${id}-bill-${index + 1}`,
      revisionId: id,
      position: index + 1,
      materialId,
      quantity,
      quantityUnit,
      note: lineNote,
    })),
  });
}
