import { judgePulls } from '@/lib/pulltest/judge-pulls';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { type SeriesReadings, seriesReadings } from '@/lib/pulltest/series-readings';

/** A plain pull that counts: straight, cured, on a checked scale, failed in the wood. */
export const PLAIN_PULL: PullRecord = {
  id: 'A-1',
  specimenId: 'A-1',
  mixId: 'A',
  embedmentMm: 12.7,
  condition: '',
  pulledAt: Date.UTC(2026, 2, 1),
  loadN: 400,
  isLowerBound: false,
  mode: 'wood-sleeve',
  leftDamage: false,
  angleDeg: 0,
  releasedAt: Date.UTC(2026, 1, 1),
  scale: { name: 'Bench scale', greatestN: 5000, checkedAt: Date.UTC(2026, 1, 1) },
  exclusion: null,
};

/** Pulls of a table: a row of loads a mix, one load a depth; null where the cell is missing. Ids are `A-1`. */
export function pullsOf(loads: readonly (readonly (number | null)[])[], depthsMm: readonly number[]): PullRecord[] {
  return loads.flatMap((row, mix) =>
    row.flatMap((loadN, i): PullRecord[] => {
      if (loadN === null) return [];
      const mixId = String.fromCharCode(65 + mix);
      const id = `${mixId}-${i + 1}`;
      return [{ ...PLAIN_PULL, id, specimenId: id, mixId, embedmentMm: depthsMm[i] ?? 0, loadN }];
    }),
  );
}

/** The readings of such a table, in whatever units its figures have: nothing in them depends on the unit. */
export function seriesOf(loads: readonly (readonly number[])[], depths: readonly number[]): SeriesReadings {
  // Depths below half a millimetre would be slips of the pen, so they are scaled up for judging and down again.
  const judged = seriesReadings(
    judgePulls(
      pullsOf(
        loads,
        depths.map((depth) => 100 * depth),
      ),
      { question: 'anchorage' },
    ),
  );
  return {
    ...judged,
    depthsMm: judged.depthsMm.map((depth) => depth / 100),
    readings: judged.readings.map((reading) => ({ ...reading, x: reading.x - Math.log(100) })),
  };
}
