import { z } from 'zod';
import type { OperationKind, Wait } from '@/lib/batch/plan';
import { OPERATION_KINDS, WAITS } from '@/lib/batch/plan';
import { bodyProfileSchema } from '@/lib/contracts/body-profile';
import { type CautionTopic, cautionTopic } from '@/lib/contracts/caution-topic';
import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import { ANCHOR_KINDS, ANCHOR_ROLES } from '@/lib/geometry/anchor';
import type { BodyProfile } from '@/lib/geometry/body-profile';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';

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
  readonly xMm: number | null;
  readonly shankAngleDeg: number | null;
  readonly wireDiameterMm: number | null;
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
  readonly lineClassN: number | null;
  readonly note: string;
  readonly anchors: readonly RevisionAnchor[];
  readonly operations: readonly RevisionOperation[];
  readonly billLines: readonly RevisionBillLine[];
}

const NAME = { select: { id: true, name: true } } as const;
const positionsSchema = z.array(z.int());
const roleSchema = z.enum(ANCHOR_ROLES);
const anchorKindSchema = z.enum(ANCHOR_KINDS);
const operationKindSchema = z.enum(OPERATION_KINDS);
const waitSchema = z.enum(WAITS);
const billUnitSchema = z.enum(BILL_UNITS);

/** A revision, or null when there is none of that id. */
export async function findRevision(reader: DbReader, revisionId: string): Promise<Revision | null> {
  const row = await reader.revision.findUnique({
    where: { id: revisionId },
    include: {
      wood: NAME,
      anchors: { include: { wire: NAME, adhesive: NAME, hook: NAME, splitRing: NAME }, orderBy: { position: 'asc' } },
      operations: { include: { material: NAME, needs: true }, orderBy: { position: 'asc' } },
      billLines: { include: { material: NAME }, orderBy: { position: 'asc' } },
    },
  });
  if (row === null) return null;
  return {
    id: row.id,
    modelId: row.modelId,
    letter: row.letter,
    frozenAt: row.frozenAt?.getTime() ?? null,
    updatedAt: row.updatedAt.getTime(),
    wood: row.wood,
    lengthMm: row.lengthMm,
    profile: bodyProfileSchema.parse(row.profile),
    lineClassN: row.lineClassN,
    note: row.note,
    anchors: row.anchors.map((anchor) => ({
      ...anchor,
      role: roleSchema.parse(anchor.role),
      kind: anchorKindSchema.parse(anchor.kind),
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
