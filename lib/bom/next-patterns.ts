import type { CutProblem, Pattern, Remainder } from '@/lib/bom/cut-problem';
import type { Relaxation } from '@/lib/bom/pattern-relaxation';

/** Patterns to go on with; `isAll` false: there were more than `most`. */
export interface NextPatterns {
  /** The most promising first. */
  readonly patterns: readonly { readonly pattern: Pattern; readonly loss: number }[];
  readonly isAll: boolean;
}

/**
 * All patterns that hold the largest piece still wanted and into which nothing more fits. One of them is in some best
 * plan, so trying all of them leaves nothing out. Patterns that, by the prices of the relaxation, lose more than
 * `mostLoss` cannot be in a plan worth having and are left out.
 */
export function nextPatterns(
  { sizes, stocks }: CutProblem,
  left: Remainder,
  relaxation: Relaxation,
  mostLoss: number,
  most: number,
): NextPatterns {
  const first = left.demand.findIndex((wanted) => wanted > 0);
  const timesUsed = new Map(relaxation.used.map(({ pattern, times }) => [keyOf(pattern), times]));
  const found: { pattern: Pattern; loss: number; times: number }[] = [];
  let isAll = true;
  const price = (size: number) => relaxation.sizePrices[size] ?? 0;
  // The best price for a unit of length among a size and all smaller ones.
  const density = sizes.map(() => 0);
  for (let size = sizes.length - 1; size >= 0; size--) {
    const own = (left.demand[size] ?? 0) > 0 ? price(size) / (sizes[size] ?? 1) : 0;
    density[size] = Math.max(own, density[size + 1] ?? 0);
  }
  for (const [stock, { capacity, cost }] of stocks.entries()) {
    if ((left.counts[stock] ?? 0) <= 0 || capacity < (sizes[first] ?? 0)) continue;
    const dear = cost - (relaxation.stockPrices[stock] ?? 0);
    const counts = sizes.map(() => 0);
    const fill = (size: number, free: number, value: number): void => {
      if (!isAll || value + free * (density[size] ?? 0) < dear - mostLoss) return;
      if (size === sizes.length) {
        if (isMaximal(sizes, left, counts, free)) {
          const pattern = { stock, counts: [...counts] };
          found.push({ pattern, loss: dear - value, times: timesUsed.get(keyOf(pattern)) ?? 0 });
          if (found.length > most) isAll = false;
        }
        return;
      }
      const length = sizes[size] ?? 1;
      const least = size === first ? 1 : 0;
      for (let count = Math.min(left.demand[size] ?? 0, Math.floor(free / length)); count >= least; count--) {
        counts[size] = count;
        fill(size + 1, free - count * length, value + count * price(size));
      }
      counts[size] = 0;
    };
    fill(first, capacity, 0);
  }
  found.sort((a, b) => b.times - a.times || a.loss - b.loss);
  return { patterns: found, isAll };
}

function isMaximal(sizes: readonly number[], left: Remainder, counts: readonly number[], free: number): boolean {
  return sizes.every((length, size) => length > free || (counts[size] ?? 0) >= (left.demand[size] ?? 0));
}

function keyOf({ stock, counts }: Pattern): string {
  return `${stock}:${counts.join()}`;
}
