import { z } from 'zod';
import type { OperationKind, Wait } from '@/lib/batch/plan';
import { OPERATION_KINDS, WAITS } from '@/lib/batch/plan';
import { ballastSchema } from '@/lib/contracts/ballast';
import { bodyProfileSchema } from '@/lib/contracts/body-profile';
import { type CautionTopic, cautionTopic } from '@/lib/contracts/caution-topic';
import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import { ANCHOR_KINDS, ANCHOR_ROLES } from '@/lib/geometry/anchor';
import type { BallastItem } from '@/lib/geometry/ballast';
import type { BodyProfile } from '@/lib/geometry/body-profile';
import { ANCHOR_FACES, type AnchorFace } from '@/lib/geometry/shank-path';
import { LINE_TYPES, type LineType } from '@/lib/strength/fishing-line';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';

export interface MaterialName {
  readonly id: string;
  readonly name: string;
}

export interface RevisionAnchor {
  readonly id: string;
  readonly position: number;
  readonly name: string;
  readonly role: AnchorRole;
  readonly kind: AnchorKind;
  /** The side its hole is drilled from. */
  readonly face: AnchorFace | null;
  readonly xMm: number | null;
  /** Above the body's axis, for nose and tail. */
  readonly zMm: number | null;
  /** Between the shank and the body's axis: 0 along it, 90 square to it. */
  readonly shankAngleDeg: number | null;
  /** The side the deep end of a slanted shank lies towards. */
  readonly leansTo: AnchorFace | null;
  /** Between the load and the shank: 0 straight, 90 square. */
  readonly loadAngleDeg: number | null;
  readonly wireDiameterMm: number | null;
  /** Length of one full turn of the twist. */
  readonly twistPitchMm: number | null;
  readonly eyeInsideMm: number | null;
  readonly isEyeClosed: boolean | null;
  readonly bitDiameterMm: number | null;
  readonly drillDepthMm: number | null;
  readonly embedmentMm: number | null;
  readonly wire: MaterialName | null;
  readonly adhesive: MaterialName | null;
  readonly hook: MaterialName | null;
  readonly splitRing: MaterialName | null;
}

export interface RevisionOperation {
  readonly id: string;
  readonly position: number;
  readonly name: string;
  readonly kind: OperationKind;
  readonly attendedMinutes: number;
  readonly material: MaterialName | null;
  /** Positions of the anchors a glue operation sets; empty: all of them. */
  readonly anchorPositions: readonly number[];
  readonly caution: CautionTopic;
  readonly needs: readonly { readonly operationId: string; readonly wait: Wait }[];
}

export const BILL_UNITS = ['g', 'mm', 'pieces'] as const;
export type BillUnit = (typeof BILL_UNITS)[number];

export interface RevisionBillLine {
  readonly id: string;
  readonly position: number;
  readonly material: MaterialName;
  readonly quantity: number;
  readonly quantityUnit: BillUnit;
  readonly note: string;
}

/** A revision with everything in it. */
export interface Revision {
  readonly id: string;
  readonly modelId: string;
  readonly letter: string;
  readonly frozenAt: Instant | null;
  readonly updatedAt: Instant;
  readonly wood: MaterialName | null;
  readonly lengthMm: number;
  readonly profile: BodyProfile;
  /** As weighed, at `moisturePercent`. */
  readonly weighedDensityKgM3: number | null;
  readonly moisturePercent: number | null;
  /** Null: nobody has said; empty: none. */
  readonly ballast: readonly BallastItem[] | null;
  readonly lineLabelN: number | null;
  readonly lineType: LineType | null;
  /** Null: the usual. */
  readonly knotShare: number | null;
  readonly dragShare: number | null;
  /** The fish that is swung out on the line; null: none is lifted. */
  readonly fishMassG: number | null;
  readonly note: string;
  readonly anchors: readonly RevisionAnchor[];
  readonly operations: readonly RevisionOperation[];
  readonly billLines: readonly RevisionBillLine[];
}

const NAME = { select: { id: true, name: true } } as const;
const positionsSchema = z.array(z.int());
const roleSchema = z.enum(ANCHOR_ROLES);
const anchorKindSchema = z.enum(ANCHOR_KINDS);
const faceSchema = z.enum(ANCHOR_FACES).nullable();
const lineTypeSchema = z.enum(LINE_TYPES).nullable();
const operationKindSchema = z.enum(OPERATION_KINDS);
const waitSchema = z.enum(WAITS);
const billUnitSchema = z.enum(BILL_UNITS);

const WHOLE = {
  wood: NAME,
  anchors: { include: { wire: NAME, adhesive: NAME, hook: NAME, splitRing: NAME }, orderBy: { position: 'asc' } },
  operations: { include: { material: NAME, needs: true }, orderBy: { position: 'asc' } },
  billLines: { include: { material: NAME }, orderBy: { position: 'asc' } },
} as const;

/** A revision, or null when there is none of that id. */
export async function findRevision(reader: DbReader, revisionId: string): Promise<Revision | null> {
  const row = await revisionRow(reader, revisionId);
  return row === null ? null : toRevision(row);
}

/** The revisions of these ids, in any order; ids that name none are passed over. */
export async function listRevisions(reader: DbReader, revisionIds: readonly string[]): Promise<Revision[]> {
  const revisions: Revision[] = [];
  for (const ids of chunked(revisionIds)) {
    const rows = await reader.revision.findMany({ where: { id: { in: ids } }, include: WHOLE });
    revisions.push(...rows.map(toRevision));
  }
  return revisions;
}

function revisionRow(reader: DbReader, id: string) {
  return reader.revision.findUnique({ where: { id }, include: WHOLE });
}

function toRevision(row: NonNullable<Awaited<ReturnType<typeof revisionRow>>>): Revision {
  return {
    id: row.id,
    modelId: row.modelId,
    letter: row.letter,
    frozenAt: row.frozenAt?.getTime() ?? null,
    updatedAt: row.updatedAt.getTime(),
    wood: row.wood,
    lengthMm: row.lengthMm,
    profile: bodyProfileSchema.parse(row.profile),
    weighedDensityKgM3: row.weighedDensityKgM3,
    moisturePercent: row.moisturePercent,
    ballast: row.ballast === null ? null : ballastSchema.parse(row.ballast),
    lineLabelN: row.lineLabelN,
    lineType: lineTypeSchema.parse(row.lineType),
    knotShare: row.knotShare,
    dragShare: row.dragShare,
    fishMassG: row.fishMassG,
    note: row.note,
    anchors: row.anchors.map((anchor) => ({
      ...anchor,
      role: roleSchema.parse(anchor.role),
      kind: anchorKindSchema.parse(anchor.kind),
      face: faceSchema.parse(anchor.face),
      leansTo: faceSchema.parse(anchor.leansTo),
    })),
    operations: row.operations.map(({ needs, ...operation }) => ({
      ...operation,
      kind: operationKindSchema.parse(operation.kind),
      anchorPositions: positionsSchema.parse(operation.anchorPositions),
      caution: cautionTopic(operation.caution),
      needs: needs.map((need) => ({ operationId: need.afterOperationId, wait: waitSchema.parse(need.wait) })),
    })),
    billLines: row.billLines.map((line) => ({ ...line, quantityUnit: billUnitSchema.parse(line.quantityUnit) })),
  };
}
