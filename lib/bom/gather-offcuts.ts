import type { CutProblem, Pattern } from '@/lib/bom/cut-problem';

/**
 * The same lengths, with pieces moved so that what is left over is in few long offcuts and not in many short ones. Takes
 * from the length that has most left and gives to the others as far as they have room; no length more is taken.
 */
export function gatherOffcuts({ sizes, stocks }: CutProblem, plan: readonly Pattern[]): Pattern[] {
  const bars = plan.map(({ stock, counts }) => ({
    stock,
    counts: [...counts],
    free: freeIn(sizes, stocks, stock, counts),
  }));
  const byFree = bars.toSorted((a, b) => b.free - a.free);
  for (const giver of byFree) {
    for (const [size, length] of sizes.entries()) {
      for (let count = giver.counts[size] ?? 0; count > 0; count--) {
        // The tightest fit that is not itself emptier than the giver: otherwise two bars would trade for ever.
        const taker = bars
          .filter((bar) => bar !== giver && bar.free >= length && bar.free <= giver.free)
          .reduce<(typeof bars)[number] | null>(
            (best, bar) => (best === null || bar.free < best.free ? bar : best),
            null,
          );
        if (taker === null) break;
        giver.counts[size] = count - 1;
        giver.free += length;
        taker.counts[size] = (taker.counts[size] ?? 0) + 1;
        taker.free -= length;
      }
    }
  }
  return bars.filter(({ counts }) => counts.some((count) => count > 0)).map(({ stock, counts }) => ({ stock, counts }));
}

function freeIn(
  sizes: readonly number[],
  stocks: CutProblem['stocks'],
  stock: number,
  counts: readonly number[],
): number {
  return counts.reduce((free, count, size) => free - count * (sizes[size] ?? 0), stocks[stock]?.capacity ?? 0);
}
