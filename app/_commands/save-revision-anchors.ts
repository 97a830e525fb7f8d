import type { AnchorsInput } from '@/lib/contracts/anchor-forms';
import type { Instant } from '@/lib/units/instant';
import type { Db, Tx } from '@/prisma/client';
import type { Revision } from '@/prisma/data/revisions';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, missingMaterials, NO_MATERIAL, takeDraft } from './draft-revision';
import { draftTx } from './draft-tx';

export type AnchorRefusal = Refusal<'no-material' | 'past-tail' | 'glue-up-emptied'>;
export type SaveAnchorsResult = Done | DraftRefusal | AnchorRefusal;

export type AnchorRow = AnchorsInput['anchors'][number];

/**
 * Replaces the anchors of a draft revision. One that was there keeps its id, and glue-ups of the route go on setting
 * the same anchors when these are moved or taken away.
 */
export function saveRevisionAnchors(
  database: Db,
  revisionId: string,
  input: AnchorsInput,
  nowAt: Instant,
): Promise<SaveAnchorsResult> {
  return draftTx(database, async (tx): Promise<SaveAnchorsResult> => {
    const draft = await takeDraft(tx, { revisionId, seenAt: input.seenAt, nowAt });
    return draft.ok ? replaceAnchors(tx, draft.revision, input.anchors) : draft;
  });
}

/** Puts rows in place of the anchors of a draft that was taken. */
export async function replaceAnchors(
  tx: Tx,
  revision: Revision,
  rows: readonly AnchorRow[],
): Promise<Done | AnchorRefusal> {
  const pastTail = rows.findIndex(({ x }) => x !== null && x > revision.lengthMm + 0.05);
  if (pastTail >= 0) {
    const message = 'This is behind the tail: the body is shorter.';
    return { ok: false, code: 'past-tail', message, field: `anchors.${pastTail}.x` };
  }
  const materials = rows.flatMap((row) => [
    row.wireMaterialId,
    row.adhesiveMaterialId,
    row.hookMaterialId,
    row.splitRingMaterialId,
  ]);
  if ((await missingMaterials(tx, materials)).length > 0) return NO_MATERIAL;
  const glueUps = movedGlueUps(revision, rows);
  const emptied = glueUps.find((glueUp) => glueUp.anchorPositions.length === 0);
  if (emptied !== undefined) {
    const message = `The glue-up "${emptied.name}" sets only anchors you took away. Change the route first.`;
    return { ok: false, code: 'glue-up-emptied', message };
  }

  await tx.anchor.deleteMany({ where: { revisionId: revision.id } });
  const known = new Set(revision.anchors.map((anchor) => anchor.id));
  for (const [index, row] of rows.entries()) {
    const id = row.id !== null && known.has(row.id) ? { id: row.id } : {};
    await tx.anchor.create({ data: { ...id, revisionId: revision.id, position: index + 1, ...columnsOf(row) } });
  }
  for (const { id, anchorPositions } of glueUps) {
    await tx.routeOperation.update({ where: { id }, data: { anchorPositions } });
  }
  return DONE;
}

function columnsOf(row: AnchorRow) {
  return {
    name: row.name,
    role: row.role,
    kind: row.kind,
    face: row.face,
    xMm: row.x,
    zMm: row.z,
    shankAngleDeg: row.angle,
    leansTo: row.leansTo,
    loadAngleDeg: row.loadAngle,
    wireMaterialId: row.wireMaterialId,
    wireDiameterMm: row.wireDiameter,
    twistPitchMm: row.twist,
    eyeInsideMm: row.eyeInside,
    isEyeClosed: row.eye,
    bitDiameterMm: row.bitDiameter,
    drillDepthMm: row.drillDepth,
    embedmentMm: row.embedment,
    adhesiveMaterialId: row.adhesiveMaterialId,
    hookMaterialId: row.hookMaterialId,
    splitRingMaterialId: row.splitRingMaterialId,
  };
}

/** The glue-ups that set chosen anchors, with the new places of these. */
function movedGlueUps(revision: Revision, rows: readonly AnchorRow[]) {
  const idAt = new Map(revision.anchors.map((anchor) => [anchor.position, anchor.id]));
  return revision.operations
    .filter((operation) => operation.anchorPositions.length > 0)
    .map(({ id, name, anchorPositions }) => ({
      id,
      name,
      anchorPositions: anchorPositions.flatMap((position) => {
        const index = rows.findIndex((row) => row.id !== null && row.id === idAt.get(position));
        return index < 0 ? [] : [index + 1];
      }),
    }));
}
