import { z } from 'zod';
import { type StoredCalibration, storedCalibrationSchema } from '@/lib/contracts/pull-plan';
import type { CalibrationKey } from '@/lib/pulltest/calibration';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';

const STATUSES = ['accepted', 'superseded', 'retired'] as const;
export type CalibrationStatus = (typeof STATUSES)[number];
const statusSchema = z.enum(STATUSES);

/** A calibration with its key, its version and what it rests on. */
export interface CalibrationRow {
  readonly id: string;
  readonly key: CalibrationKey;
  readonly version: number;
  readonly status: CalibrationStatus;
  readonly acceptedAt: Instant;
  readonly personId: string | null;
  readonly body: StoredCalibration;
  readonly note: string;
  readonly endedAt: Instant | null;
  readonly endedReason: string | null;
}

type Row = NonNullable<Awaited<ReturnType<DbReader['calibration']['findUnique']>>>;

function toCalibration(row: Row): CalibrationRow {
  return {
    id: row.id,
    key: { woodId: row.woodMaterialId, adhesiveId: row.adhesiveMaterialId, wireId: row.wireMaterialId },
    version: row.version,
    status: statusSchema.parse(row.status),
    acceptedAt: row.acceptedAt.getTime(),
    personId: row.personId,
    body: storedCalibrationSchema.parse(row.body),
    note: row.note,
    endedAt: row.endedAt?.getTime() ?? null,
    endedReason: row.endedReason,
  };
}

/** The calibrations in force, one for each wood, adhesive and wire. */
export async function listAcceptedCalibrations(reader: DbReader): Promise<CalibrationRow[]> {
  const rows = await reader.calibration.findMany({ where: { status: 'accepted' }, orderBy: { acceptedAt: 'asc' } });
  return rows.map(toCalibration);
}

/** All calibrations, those in force first, then the newest first. */
export async function listCalibrations(reader: DbReader): Promise<CalibrationRow[]> {
  const rows = await reader.calibration.findMany({ orderBy: [{ status: 'asc' }, { acceptedAt: 'desc' }] });
  return rows.map(toCalibration);
}

/** The calibration in force for a key; null where there is none. */
export async function findAcceptedCalibration(reader: DbReader, key: CalibrationKey): Promise<CalibrationRow | null> {
  const row = await reader.calibration.findFirst({ where: { ...columnsOf(key), status: 'accepted' } });
  return row === null ? null : toCalibration(row);
}

/** A key as the columns of its row. */
export function columnsOf({ woodId, adhesiveId, wireId }: CalibrationKey) {
  return { woodMaterialId: woodId, adhesiveMaterialId: adhesiveId, wireMaterialId: wireId };
}
