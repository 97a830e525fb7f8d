import type { PullCorrectionInput } from '@/lib/contracts/pull-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { appendPullChange, findPullSeries } from '@/prisma/data/pull-series';
import { findScale } from '@/prisma/data/scales';
import { getShop } from '@/prisma/data/shop';
import { pullClocks } from '../_server/pull-clock';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { pullFault } from './pull-fault';

export interface CorrectPullRequest {
  readonly seriesId: string;
  readonly pullId: string;
  readonly input: Omit<PullCorrectionInput, 'pulledAt'>;
  /** Null: as it was. */
  readonly pulledAt: Instant | null;
  readonly personId: string | null;
  readonly now: Instant;
}

export type CorrectPullResult =
  | Done
  | Refusal<'no-pull' | 'series-closed' | 'no-load' | 'bound-of-nothing' | 'in-future' | 'no-scale'>;

/** Puts right a slip of the pen. What stood there before stays in the history, with who changed it and why. */
export async function correctPull(database: Db, request: CorrectPullRequest): Promise<CorrectPullResult> {
  const { seriesId, pullId, input, now, personId } = request;
  if ((request.pulledAt ?? 0) > now) {
    return { ok: false, code: 'in-future', message: 'This hour is still to come.', field: 'pulledAt' };
  }
  const seen = await findPullSeries(database, seriesId);
  if (seen === null) return NO_PULL;
  const clockOf = await pullClocks(database, await getShop(database), seen, now);
  return writeTx(database, async (tx): Promise<CorrectPullResult> => {
    const series = await findPullSeries(tx, seriesId);
    const pull = series?.pulls.find(({ id }) => id === pullId);
    const specimen = series?.specimens.find(({ id }) => id === pull?.specimenId);
    if (series === null || pull === undefined || specimen === undefined) return NO_PULL;
    if (series.isClosed) {
      return { ok: false, code: 'series-closed', message: 'This series is closed. Reopen it first.' };
    }
    const wrong = pullFault(input);
    if (wrong !== null) return wrong;
    const scale = input.scaleId === null ? null : await findScale(tx, input.scaleId);
    if (input.scaleId !== null && scale === null) {
      return { ok: false, code: 'no-scale', message: 'Choose a scale of the list.', field: 'scaleId' };
    }
    const pulledAt = request.pulledAt ?? pull.pulledAt;
    const clock = clockOf(specimen, pulledAt);
    const isSameScale = (scale?.id ?? null) === pull.scaleId;
    const { load: loadN, isLowerBound, mode, leftDamage, angleDeg, note } = input;
    await tx.pull.update({
      where: { id: pullId },
      data: {
        loadN,
        isLowerBound,
        mode,
        leftDamage,
        angleDeg,
        note,
        pulledAt: new Date(pulledAt),
        releasedAt: clock.releasedAt === null ? null : new Date(clock.releasedAt),
        cureHours: clock.cureHours,
        ...(isSameScale
          ? {}
          : {
              scaleId: scale?.id ?? null,
              scaleName: scale?.name ?? null,
              scaleGreatestN: scale?.greatestN ?? null,
              scaleCheckedOn: scale?.checkedOn ?? null,
            }),
      },
    });
    await appendPullChange(tx, seriesId, {
      kind: 'pull-corrected',
      pullId,
      at: now,
      personId,
      before: pull,
      after: { ...input, pulledAt },
    });
    return DONE;
  });
}

const NO_PULL: CorrectPullResult = {
  ok: false,
  code: 'no-pull',
  message: 'This series has no such pull. Reload the page.',
};
