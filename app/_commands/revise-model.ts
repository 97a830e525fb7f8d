import { randomUUID } from 'node:crypto';
import { nextRevisionLetter } from '@/lib/spec/revision-letter';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { findModel } from '@/prisma/data/models';
import { listOperationPlanning, saveOperationPlanning } from '@/prisma/data/operation-planning';
import { findRevision, type Revision } from '@/prisma/data/revisions';
import type { Refusal } from './command-result';

export type ReviseModelResult =
  | { readonly ok: true; readonly revisionId: string; readonly letter: string }
  | Refusal<'no-model' | 'draft-open'>;

/** Makes the next revision as a copy of the newest one, which must be frozen. */
export function reviseModel(database: Db, modelId: string, nowAt: Instant): Promise<ReviseModelResult> {
  return writeTx(database, async (tx): Promise<ReviseModelResult> => {
    const newest = (await findModel(tx, modelId))?.revisions[0];
    const source = newest === undefined ? null : await findRevision(tx, newest.id);
    if (source === null) return { ok: false, code: 'no-model', message: 'This model is not there any more.' };
    if (source.frozenAt === null) {
      const message = `Revision ${source.letter} is still a draft: change that one, or freeze it first.`;
      return { ok: false, code: 'draft-open', message };
    }
    const letter = nextRevisionLetter(source.letter);
    const revisionId = await copyRevision(tx, source, letter, nowAt);
    return { ok: true, revisionId, letter };
  });
}

async function copyRevision(tx: Tx, source: Revision, letter: string, nowAt: Instant): Promise<string> {
  const now = new Date(nowAt);
  const { id: revisionId } = await tx.revision.create({
    data: {
      modelId: source.modelId,
      letter,
      woodMaterialId: source.wood?.id ?? null,
      lengthMm: source.lengthMm,
      profile: source.profile.map((station) => ({ ...station })),
      weighedDensityKgM3: source.weighedDensityKgM3,
      moisturePercent: source.moisturePercent,
      ...(source.ballast === null ? {} : { ballast: source.ballast.map((item) => ({ ...item })) }),
      lineLabelN: source.lineLabelN,
      lineType: source.lineType,
      knotShare: source.knotShare,
      dragShare: source.dragShare,
      fishMassG: source.fishMassG,
      note: source.note,
      createdAt: now,
      updatedAt: now,
    },
  });
  await tx.anchor.createMany({
    data: source.anchors.map((anchor) => ({
      revisionId,
      position: anchor.position,
      name: anchor.name,
      role: anchor.role,
      kind: anchor.kind,
      face: anchor.face,
      xMm: anchor.xMm,
      zMm: anchor.zMm,
      shankAngleDeg: anchor.shankAngleDeg,
      leansTo: anchor.leansTo,
      loadAngleDeg: anchor.loadAngleDeg,
      wireMaterialId: anchor.wire?.id ?? null,
      wireDiameterMm: anchor.wireDiameterMm,
      twistPitchMm: anchor.twistPitchMm,
      eyeInsideMm: anchor.eyeInsideMm,
      isEyeClosed: anchor.isEyeClosed,
      bitDiameterMm: anchor.bitDiameterMm,
      drillDepthMm: anchor.drillDepthMm,
      embedmentMm: anchor.embedmentMm,
      adhesiveMaterialId: anchor.adhesive?.id ?? null,
      hookMaterialId: anchor.hook?.id ?? null,
      splitRingMaterialId: anchor.splitRing?.id ?? null,
    })),
  });
  await copyRoute(tx, source, revisionId);
  await tx.billLine.createMany({
    data: source.billLines.map(({ position, material, quantity, quantityUnit, note }) => ({
      revisionId,
      position,
      materialId: material.id,
      quantity,
      quantityUnit,
      note,
    })),
  });
  return revisionId;
}

async function copyRoute(tx: Tx, source: Revision, revisionId: string): Promise<void> {
  const idOf = new Map(source.operations.map((operation) => [operation.id, randomUUID()]));
  const id = (old: string) => idOf.get(old) ?? old;
  await tx.routeOperation.createMany({
    data: source.operations.map((operation) => ({
      id: id(operation.id),
      revisionId,
      position: operation.position,
      name: operation.name,
      kind: operation.kind,
      attendedMinutes: operation.attendedMinutes,
      materialId: operation.material?.id ?? null,
      anchorPositions: [...operation.anchorPositions],
      caution: operation.caution,
    })),
  });
  const planning = await listOperationPlanning(tx, [source.id]);
  await saveOperationPlanning(
    tx,
    [...planning.values()].map((row) => ({ ...row, operationId: id(row.operationId) })),
  );
  await tx.operationNeed.createMany({
    data: source.operations.flatMap((operation) =>
      operation.needs.map((need) => ({
        operationId: id(operation.id),
        afterOperationId: id(need.operationId),
        wait: need.wait,
      })),
    ),
  });
}
