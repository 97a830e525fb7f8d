import type { StoredCalibration } from '@/lib/contracts/pull-plan';
import type { CalibrationKey } from '@/lib/pulltest/calibration';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { columnsOf } from '@/prisma/data/calibrations';
import { appendPullChange, json } from '@/prisma/data/pull-series';
import type { Refusal } from './command-result';

export interface AcceptCalibrationRequest {
  readonly seriesId: string;
  /** Version of the series that `body` was made from. */
  readonly seenVersion: number;
  readonly key: CalibrationKey;
  readonly body: StoredCalibration;
  readonly note: string;
  readonly personId: string | null;
  readonly now: Instant;
}

export type AcceptCalibrationResult =
  | { readonly ok: true; readonly calibrationId: string; readonly version: number }
  | Refusal<'no-series' | 'changed-meanwhile'>;

/**
 * Makes an analysis the shop's calibration of its wood, glue and wire. The one before is superseded and stays as it
 * was. Refused when the series has changed since the maker saw what it would do.
 */
export function acceptCalibration(database: Db, request: AcceptCalibrationRequest): Promise<AcceptCalibrationResult> {
  const { seriesId, seenVersion, key, body, note, personId, now } = request;
  return writeTx(database, async (tx): Promise<AcceptCalibrationResult> => {
    const series = await tx.pullSeries.findUnique({ where: { id: seriesId }, select: { version: true } });
    if (series === null) return { ok: false, code: 'no-series', message: 'This series is not there any more.' };
    const columns = columnsOf(key);
    if (series.version !== seenVersion) {
      const message =
        'The series has changed since this page was made. Look at what would change now, and accept again.';
      return { ok: false, code: 'changed-meanwhile', message };
    }
    const newest = await tx.calibration.findFirst({ where: columns, orderBy: { version: 'desc' } });
    const version = (newest?.version ?? 0) + 1;
    await tx.calibration.updateMany({
      where: { ...columns, status: 'accepted' },
      data: { status: 'superseded', endedAt: new Date(now), endedReason: `Version ${version} was accepted.` },
    });
    const { id } = await tx.calibration.create({
      data: { ...columns, version, status: 'accepted', acceptedAt: new Date(now), personId, body: json(body), note },
    });
    const after = { calibrationId: id, version, condition: body.conditionName };
    await appendPullChange(tx, seriesId, { kind: 'calibration-accepted', at: now, personId, after });
    return { ok: true, calibrationId: id, version };
  });
}
