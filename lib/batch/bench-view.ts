import { urgentActions } from '@/lib/batch/bench-actions';
import type {
  BenchBatch,
  BenchLimits,
  BenchRelease,
  BenchView,
  RunningMix,
  Shortened,
} from '@/lib/batch/bench-entries';
import { heldPieces } from '@/lib/batch/bench-held';
import { sureAt } from '@/lib/batch/next-releases';
import { byInstant, lastBand } from '@/lib/batch/release-band';
import type { Instant } from '@/lib/units/instant';

/** Chosen: a screenful of each with room to scroll; the counts tell of the rest. */
export const BENCH_LIMITS: BenchLimits = { actions: 40, runningMixes: 20, releases: 40, held: 40, toFinish: 20 };

/**
 * What the Bench shows at `nowAt`: over all open batches what can be done, most urgent first; what is running; what is
 * released next; and what is held and why. Finished batches among `batches` are passed over. The lists are no longer
 * than `limits`, whatever comes in.
 */
export function benchView(batches: readonly BenchBatch[], nowAt: Instant, limits = BENCH_LIMITS): BenchView {
  const open = batches.filter(({ state }) => state.openedAt !== null && state.finishedAt === null);
  const toFinish = open.filter(({ evaluation }) => evaluation.donePieces === evaluation.livePieces);
  return {
    nowAt,
    actions: shortened(urgentActions(open), limits.actions),
    runningMixes: shortened(runningMixes(open, nowAt), limits.runningMixes),
    releases: shortened(comingReleases(open), limits.releases),
    held: shortened(heldPieces(open), limits.held),
    toFinish: shortened(
      toFinish.map(({ batchId }) => batchId),
      limits.toFinish,
    ),
  };
}

function shortened<T>(all: readonly T[], limit: number): Shortened<T> {
  return { shown: all.slice(0, limit), more: Math.max(0, all.length - limit) };
}

function runningMixes(batches: readonly BenchBatch[], nowAt: Instant): readonly RunningMix[] {
  const running = batches.flatMap(({ batchId, state }) =>
    state.mixes
      .filter((mix) => mix.closedAt === null)
      .map(
        (mix): RunningMix => ({
          batchId,
          mixId: mix.mixId,
          mixNumber: mix.number,
          operationId: mix.operationId,
          materialName: mix.materialName,
          mixedAt: mix.mixedAt,
          potLife: mix.potLife,
          past: mix.potLife.ok && nowAt > mix.potLife.lowerAt,
          jointCount: mix.jointCount,
          coatCount: mix.coatCount,
        }),
      ),
  );
  const endsAt = ({ potLife }: RunningMix) => (potLife.ok ? potLife.lowerAt : null);
  return running.sort((a, b) => byInstant(endsAt(a), endsAt(b)) || a.mixedAt - b.mixedAt);
}

/** Joints of one mix that reach the same milestone next are one entry, however many minutes they took to set. */
function comingReleases(batches: readonly BenchBatch[]): readonly BenchRelease[] {
  const coming: BenchRelease[] = [];
  for (const { batchId, evaluation } of batches) {
    const merged = new Map<string, BenchRelease>();
    for (const { clock, milestone, band } of evaluation.nextReleases) {
      const key = `${clock.mixId} ${milestone}`;
      const known = merged.get(key);
      merged.set(key, {
        batchId,
        mixId: clock.mixId,
        mixNumber: clock.mixNumber,
        operationId: clock.operationId,
        milestone,
        // All joints of a mix share its recoat-by, which counts from the mixing.
        band: known === undefined ? band : lastBand(known.band, band),
        pieces: known === undefined ? clock.pieces : [...new Set([...known.pieces, ...clock.pieces])],
      });
    }
    for (const entry of merged.values()) coming.push({ ...entry, pieces: [...entry.pieces].sort((a, b) => a - b) });
  }
  return coming.sort((a, b) => byInstant(sureAt(a), sureAt(b)));
}
