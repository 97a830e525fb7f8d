import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findMixSheet } from '@/prisma/data/batch-mixes';
import { findSheetMaterial } from '@/prisma/data/mix-materials';
import { appendPullChange, json } from '@/prisma/data/pull-series';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export interface SavePullMixRequest {
  readonly seriesId: string;
  readonly mixId: string;
  readonly mixedAt: Instant | null;
  /** The cup of a batch that the specimens were set from, too; its hour of mixing then counts. */
  readonly batchMixId: string | null;
  readonly setAt: Instant | null;
  readonly adhesiveLotCode: string;
  readonly note: string;
  readonly personId: string | null;
  readonly now: Instant;
}

export type SavePullMixResult =
  | Done
  | Refusal<'no-mix' | 'no-batch-mix' | 'of-a-batch' | 'in-future' | 'set-before-mixed'>;

/**
 * Writes down when a mix of a series was mixed and its specimens were set; their cure clocks count from then. The data
 * sheet is copied as it stands when the hour of mixing is first written down. Pulls keep the clock they were made with.
 */
export function savePullMix(database: Db, request: SavePullMixRequest): Promise<SavePullMixResult> {
  const { seriesId, mixId, setAt, adhesiveLotCode, note, now, batchMixId } = request;
  return writeTx(database, async (tx): Promise<SavePullMixResult> => {
    const row = await tx.pullMix.findFirst({
      where: { id: mixId, seriesId },
      include: { series: { select: { kind: true } } },
    });
    if (row === null) return { ok: false, code: 'no-mix', message: 'This series has no such mix. Reload the page.' };
    if (row.series.kind === 'acceptance') {
      const message = 'This is a mix of a batch: its hours stand in the history of the batch, and are corrected there.';
      return { ok: false, code: 'of-a-batch', message };
    }
    const batchMix = batchMixId === null ? null : await findMixSheet(tx, batchMixId);
    if (batchMixId !== null && batchMix === null) {
      const message = 'This mix of a batch is not there any more. Choose another.';
      return { ok: false, code: 'no-batch-mix', message, field: 'batchMixId' };
    }
    const mixedAt = batchMix?.mixedAt ?? request.mixedAt;
    if ((mixedAt ?? 0) > now || (setAt ?? 0) > now) {
      const field = (mixedAt ?? 0) > now ? 'mixedAt' : 'setAt';
      return { ok: false, code: 'in-future', message: 'This hour is still to come.', field };
    }
    if (setAt !== null && (mixedAt === null || setAt < mixedAt)) {
      const message = 'Specimens are set after mixing. Write both hours.';
      return { ok: false, code: 'set-before-mixed', message, field: 'setAt' };
    }
    const sheet =
      batchMix?.sheet ??
      (row.mixedAt === null && row.adhesiveMaterialId !== null
        ? ((await findSheetMaterial(tx, row.adhesiveMaterialId))?.sheet ?? null)
        : null);
    await tx.pullMix.update({
      where: { id: mixId },
      data: {
        mixedAt: mixedAt === null ? null : new Date(mixedAt),
        setAt: setAt === null ? null : new Date(setAt),
        adhesiveLotCode,
        note,
        batchMixId,
        ...(sheet === null ? {} : { sheet: json(sheet) }),
      },
    });
    await appendPullChange(tx, seriesId, {
      kind: 'mix-changed',
      at: now,
      personId: request.personId,
      before: { mix: row.name, mixedAt: row.mixedAt, setAt: row.setAt, lot: row.adhesiveLotCode, note: row.note },
      after: { mix: row.name, mixedAt, setAt, lot: adhesiveLotCode, note },
    });
    return DONE;
  });
}
