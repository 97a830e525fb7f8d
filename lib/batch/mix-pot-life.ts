import type { MixPotLife } from '@/lib/batch/batch-state';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { potLife } from '@/lib/cure/pot-life';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';

/** A cup as far as its pot life goes. */
interface Cup {
  readonly sheet: AdhesiveSheet;
  readonly massG: number;
  readonly temperatureC: number;
}

/**
 * When a cup mixed at `mixedAt` ends its pot life, rounded down to the millisecond. Figures that cannot be computed
 * with give `bad-figures`, never an error, since an event that is already written must fold.
 */
export function mixPotLife({ sheet, massG, temperatureC }: Cup, mixedAt: Instant): MixPotLife {
  if (!(massG > 0 && Number.isFinite(massG) && Number.isFinite(temperatureC)))
    return { ok: false, code: 'bad-figures' };
  try {
    const life = potLife(sheet, massG, temperatureC);
    if (!life.ok) return { ok: false, code: life.code };
    const ends = [life.lowerMinutes, life.centralMinutes, life.upperMinutes].map((minutes) =>
      Math.floor(mixedAt + minutes * MINUTE_MS),
    );
    const [lowerAt, centralAt, upperAt] = ends;
    if (lowerAt === undefined || centralAt === undefined || upperAt === undefined || !ends.every(Number.isFinite)) {
      return { ok: false, code: 'bad-figures' };
    }
    return { ok: true, lowerAt, centralAt, upperAt, criterion: life.criterion, isExtrapolated: life.isExtrapolated };
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, code: 'bad-figures' };
    throw error;
  }
}
