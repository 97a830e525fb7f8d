import type { TriedSpecInput } from '@/lib/contracts/tried-spec';
import { drilledAngle, holePlace } from '@/lib/geometry/drilled-hole';
import type { Instant } from '@/lib/units/instant';
import type { Db, Tx } from '@/prisma/client';
import type { Revision, RevisionAnchor } from '@/prisma/data/revisions';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, missingMaterials, NO_MATERIAL, takeDraft } from './draft-revision';
import { draftTx } from './draft-tx';
import { type AnchorRefusal, type AnchorRow, replaceAnchors } from './save-revision-anchors';

export type SaveTriedSpecResult =
  | Done
  | DraftRefusal
  | AnchorRefusal
  | Refusal<'no-anchor' | 'deeper-than-drilled' | 'bit-too-narrow'>;

/** Saves what was tried out on a draft, all of it or nothing: anchors, and with them wood, line and bill. */
export function saveTriedSpec(
  database: Db,
  revisionId: string,
  input: TriedSpecInput,
  nowAt: Instant,
): Promise<SaveTriedSpecResult> {
  return draftTx(database, async (tx): Promise<SaveTriedSpecResult> => {
    const draft = await takeDraft(tx, { revisionId, seenAt: input.seenAt, nowAt });
    if (!draft.ok) return draft;
    const { revision } = draft;
    const others = [input.woodMaterialId ?? null, ...input.bill.map(({ materialId }) => materialId)];
    if ((await missingMaterials(tx, others)).length > 0) return NO_MATERIAL;
    if (input.anchors.length > 0) {
      const rows = triedRows(revision, input);
      if (!Array.isArray(rows)) return rows;
      const replaced = await replaceAnchors(tx, revision, rows);
      if (!replaced.ok) return replaced;
    }
    await tx.revision.update({
      where: { id: revisionId },
      data: {
        ...(input.woodMaterialId === undefined ? {} : otherWood(revision, input.woodMaterialId)),
        ...(input.line === undefined ? {} : { lineLabelN: input.line.labelN, lineType: input.line.type }),
      },
    });
    await putIntoBill(tx, revision, input.bill);
    return DONE;
  });
}

/** Another wood was not weighed yet: what was weighed belongs to the one before. */
function otherWood(revision: Revision, woodMaterialId: string) {
  if (revision.wood?.id === woodMaterialId) return {};
  return { woodMaterialId, weighedDensityKgM3: null, moisturePercent: null };
}

function triedRows(
  revision: Revision,
  input: TriedSpecInput,
): AnchorRow[] | Extract<SaveTriedSpecResult, { ok: false }> {
  const gone = input.anchors.some(({ anchorId }) => revision.anchors.every(({ id }) => id !== anchorId));
  if (gone) {
    return { ok: false, code: 'no-anchor', message: 'An anchor you changed is not there any more. Reload the page.' };
  }
  const rows = revision.anchors.map((anchor) => {
    const set = input.anchors.find(({ anchorId }) => anchorId === anchor.id)?.set;
    return set === undefined ? rowOf(anchor) : triedRow(anchor, set);
  });
  for (const row of rows) {
    const { name, kind, embedment, drillDepth, bitDiameter, wireDiameter } = row;
    if (embedment !== null && drillDepth !== null && embedment > drillDepth + 0.05) {
      const message = `${name}: the shank cannot sit deeper than the hole was drilled.`;
      return { ok: false, code: 'deeper-than-drilled', message };
    }
    const isTooNarrow = bitDiameter !== null && wireDiameter !== null && bitDiameter < wireDiameter;
    if (isTooNarrow && kind !== 'screw-eye') {
      return { ok: false, code: 'bit-too-narrow', message: `${name}: the hole is narrower than the wire.` };
    }
  }
  return rows;
}

function triedRow(anchor: RevisionAnchor, set: TriedSpecInput['anchors'][number]['set']): AnchorRow {
  const row = rowOf(anchor);
  const picked = <Key extends keyof typeof set, Now>(key: Key, now: Now) => {
    const value = set[key];
    return value === undefined ? now : value;
  };
  return {
    ...row,
    kind: set.kind ?? row.kind,
    x: picked('xMm', row.x),
    z: picked('zMm', row.z),
    ...leanOf(anchor, set.slantDeg),
    loadAngle: picked('loadAngleDeg', row.loadAngle),
    wireMaterialId: picked('wireMaterialId', row.wireMaterialId),
    wireDiameter: picked('wireDiameterMm', row.wireDiameter),
    twist: picked('twistPitchMm', row.twist),
    eye: picked('isEyeClosed', row.eye),
    bitDiameter: picked('bitDiameterMm', row.bitDiameter),
    drillDepth: picked('drillDepthMm', row.drillDepth),
    embedment: picked('embedmentMm', row.embedment),
    adhesiveMaterialId: picked('adhesiveMaterialId', row.adhesiveMaterialId),
  };
}

/** A lean as it is kept: the angle to the body's axis and the side its deep end lies towards. */
function leanOf(anchor: RevisionAnchor, slantDeg: number | null | undefined) {
  const before = { angle: anchor.shankAngleDeg, leansTo: anchor.leansTo };
  if (slantDeg === undefined || slantDeg === null || anchor.face === null) return before;
  if (holePlace(anchor)?.slantDeg === slantDeg) return before;
  const { shankAngleDeg, leansTo } = drilledAngle(anchor.face, slantDeg);
  return { angle: shankAngleDeg, leansTo };
}

function rowOf(anchor: RevisionAnchor): AnchorRow {
  return {
    id: anchor.id,
    name: anchor.name,
    role: anchor.role,
    kind: anchor.kind,
    face: anchor.face,
    x: anchor.xMm,
    z: anchor.zMm,
    angle: anchor.shankAngleDeg,
    leansTo: anchor.leansTo,
    loadAngle: anchor.loadAngleDeg,
    wireMaterialId: anchor.wire?.id ?? null,
    wireDiameter: anchor.wireDiameterMm,
    twist: anchor.twistPitchMm,
    eyeInside: anchor.eyeInsideMm,
    eye: anchor.isEyeClosed,
    bitDiameter: anchor.bitDiameterMm,
    drillDepth: anchor.drillDepthMm,
    embedment: anchor.embedmentMm,
    adhesiveMaterialId: anchor.adhesive?.id ?? null,
    hookMaterialId: anchor.hook?.id ?? null,
    splitRingMaterialId: anchor.splitRing?.id ?? null,
  };
}

async function putIntoBill(tx: Tx, revision: Revision, lines: TriedSpecInput['bill']): Promise<void> {
  let position = Math.max(0, ...revision.billLines.map((line) => line.position));
  for (const { materialId, quantity, quantityUnit } of lines) {
    const before = revision.billLines.find(({ material }) => material.id === materialId);
    if (before !== undefined) {
      await tx.billLine.update({ where: { id: before.id }, data: { quantity, quantityUnit } });
      continue;
    }
    position += 1;
    await tx.billLine.create({
      data: { revisionId: revision.id, position, materialId, quantity, quantityUnit, note: '' },
    });
  }
}
