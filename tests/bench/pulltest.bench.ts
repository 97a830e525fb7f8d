import { conclusion } from '@/lib/pulltest/conclusion';
import { nextTests } from '@/lib/pulltest/next-test';
import { pullAnalyses } from '@/lib/pulltest/pull-analysis';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { inches, poundsForce } from '@/lib/units/force-and-length';

/** The computing behind the page of a series: analysis with and without, conclusion, and what to test next. */

const GOAL = {
  demandN: poundsForce(60),
  depthMm: null,
  stepMm: inches(1 / 16),
  certainty: { content: 0.95, confidence: 0.75 },
  seed: 1,
};
const WORDS = { mix: (id: string) => `mix ${id}`, pull: (id: string) => id, pieces: () => null };

/** Pulls of every depth in every mix; each tenth stopped before the joint failed where `hasBounds`. */
function pulls(mixes: number, depths: number, hasBounds: boolean): PullRecord[] {
  const random = seededRandom(mixes * 1000 + depths);
  return Array.from({ length: mixes }, (_, mix) => {
    const effect = 0.1 * (random() - 0.5);
    return Array.from({ length: depths }, (__, i): PullRecord => {
      const embedmentMm = inches(0.25 + (0.5 * i) / Math.max(1, depths - 1));
      const id = `${mix}-${i}`;
      return {
        id,
        specimenId: id,
        mixId: String(mix),
        embedmentMm,
        condition: '',
        pulledAt: 1,
        loadN: 40 * embedmentMm * Math.exp(effect + 0.2 * (random() - 0.5)),
        isLowerBound: hasBounds && random() < 0.1,
        mode: 'wood-sleeve',
        leftDamage: false,
        angleDeg: 0,
        releasedAt: 0,
        scale: null,
        exclusion: mix === 0 && i === 0 ? { reason: 'fixture-slipped', note: '', personId: null, at: 0 } : null,
      };
    });
  }).flat();
}

function median(times: number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
}

/** Prints one line a figure, each the median of several runs. */
export function run(): void {
  for (const [mixes, depths, repeats] of [
    [3, 5, 40],
    [400, 5, 7],
    [40, 50, 7],
    [3, 667, 7],
  ] as const) {
    for (const hasBounds of [false, true]) {
      const records = pulls(mixes, depths, hasBounds);
      const times = Array.from({ length: repeats }, () => {
        const start = performance.now();
        for (const analysis of pullAnalyses(records, 'anchorage', GOAL)) {
          conclusion(analysis, GOAL, WORDS);
          nextTests(analysis, GOAL, WORDS);
        }
        return performance.now() - start;
      });
      const kind = hasBounds ? 'a tenth of them at least' : 'all exact';
      console.log(
        `pull tests: ${records.length} pulls (${mixes} mixes x ${depths} depths, ${kind}): ${median(times).toFixed(1)} ms`,
      );
    }
  }
}
