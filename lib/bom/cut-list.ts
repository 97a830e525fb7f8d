import { type CutProblem, greatestCommonDivisor, type Pattern, type StockSize } from '@/lib/bom/cut-problem';
import { searchCuts } from '@/lib/bom/cut-search';
import { gatherOffcuts } from '@/lib/bom/gather-offcuts';

/** Lengths in stock that are alike. */
export interface StockLength {
  readonly id: string;
  readonly lengthMm: number;
  readonly count: number;
}

/** Pieces wanted of one length. */
export interface WantedPiece {
  readonly id: string;
  readonly lengthMm: number;
  readonly count: number;
}

export interface CutSettings {
  /** Lost at every cut; 0 for a cutter that shears. */
  readonly kerfMm: number;
  /** Lost once from every length, where its end is bent or frayed. */
  readonly endTrimMm: number;
  /** From this length on an offcut is kept. */
  readonly reuseMm: number;
  /** Length that can be bought where the stock does not suffice; null: none. */
  readonly buyMm: number | null;
}

/** One length as it is cut. Pieces, kerf, trim and offcut add up to its length. */
export interface CutBar {
  /** Null: to be bought. */
  readonly stockId: string | null;
  readonly lengthMm: number;
  /** Longest first. */
  readonly pieces: readonly { readonly id: string; readonly lengthMm: number }[];
  readonly kerfMm: number;
  readonly trimMm: number;
  readonly offcutMm: number;
  readonly isKept: boolean;
}

export type CutList =
  | {
      readonly ok: true;
      readonly bars: readonly CutBar[];
      /** Sum of the lengths taken. */
      readonly takenMm: number;
      readonly buyCount: number;
      /** No plan buys fewer lengths and then takes less. Not proven: none takes less than `leastMm`. */
      readonly isProven: boolean;
      readonly leastMm: number;
    }
  /** Pieces that no length in stock, and none that can be bought, is long enough for. */
  | { readonly ok: false; readonly code: 'too-long'; readonly ids: readonly string[]; readonly longestMm: number }
  /** The stock does not suffice and nothing can be bought. `missingMm`: at least so much more wire, 0 where it is the lengths. */
  | { readonly ok: false; readonly code: 'not-enough'; readonly missingMm: number };

/** Lengths are told apart to a hundredth of a millimetre. */
const PER_MM = 100;

/**
 * How to cut all pieces from the lengths there are: the fewest lengths bought, then the least length taken into use, then
 * what is left over in few long offcuts. Solved exactly; `isProven` says whether the proof was finished.
 *
 * Throws RangeError for lengths that are not positive, counts that are not whole, or a negative kerf or trim.
 * Source: one-dimensional cutting stock with kerf, pieces of l + k into a capacity of L - trim + k (derived).
 */
export function cutList(stock: readonly StockLength[], pieces: readonly WantedPiece[], settings: CutSettings): CutList {
  requireFigures(stock, pieces, settings);
  const { kerfMm, endTrimMm, buyMm } = settings;
  const wanted = pieces.filter(({ count }) => count > 0);
  const lengths = [...new Set(wanted.map(({ lengthMm }) => inUnits(lengthMm + kerfMm)))].toSorted((a, b) => b - a);
  const unit = greatestCommonDivisor(lengths);
  const capacity = (lengthMm: number) => Math.max(0, Math.floor(inUnits(lengthMm - endTrimMm + kerfMm) / unit));
  const own = kindsOf(stock.filter(({ count }) => count > 0));
  const longestMm = Math.max(0, buyMm ?? 0, ...own.map(({ lengthMm }) => lengthMm));
  const tooLong = wanted.filter(({ lengthMm }) => inUnits(lengthMm + kerfMm) / unit > capacity(longestMm));
  if (tooLong.length > 0) return { ok: false, code: 'too-long', ids: tooLong.map(({ id }) => id), longestMm };
  const sizes = lengths.map((length) => length / unit);
  const demand = lengths.map((length) => countOf(wanted, (piece) => inUnits(piece.lengthMm + kerfMm) === length));
  const withStock = (stocks: readonly StockSize[]): CutProblem => ({ sizes, demand, stocks });
  const ownAt = (cost: (lengthMm: number) => number) =>
    own.map(({ lengthMm, count }) => ({ capacity: capacity(lengthMm), cost: cost(lengthMm), count }));
  const bought = { capacity: capacity(buyMm ?? 0), cost: 1, count: buyMm === null ? 0 : Number.POSITIVE_INFINITY };
  const fewest = searchCuts(withStock([...ownAt(() => 0), bought]));
  if (fewest.plan === null) {
    const room = own.reduce((sum, { lengthMm, count }) => sum + count * inUnits(lengthMm - endTrimMm + kerfMm), 0);
    const need = wanted.reduce((sum, { lengthMm, count }) => sum + count * inUnits(lengthMm + kerfMm), 0);
    return { ok: false, code: 'not-enough', missingMm: Math.max(0, need - room) / PER_MM };
  }
  const problem = withStock([...ownAt(inUnits), { ...bought, cost: inUnits(buyMm ?? 0), count: fewest.cost }]);
  const least = searchCuts(problem);
  const plan = gatherOffcuts(problem, least.plan ?? fewest.plan);
  const bars = barsOf(plan, problem, lengths, [...own, { lengthMm: buyMm ?? 0, count: 0, ids: [] }], wanted, settings);
  return {
    ok: true,
    bars,
    takenMm: bars.reduce((sum, bar) => sum + inUnits(bar.lengthMm), 0) / PER_MM,
    buyCount: bars.filter((bar) => bar.stockId === null).length,
    isProven: fewest.isProven && least.isProven,
    leastMm: Number.isFinite(least.bound) ? least.bound / PER_MM : 0,
  };
}

interface StockKind {
  readonly lengthMm: number;
  readonly count: number;
  /** In the order they were given, each as often as it is there. */
  readonly ids: readonly string[];
}

function kindsOf(stock: readonly StockLength[]): StockKind[] {
  const lengths = [...new Set(stock.map(({ lengthMm }) => inUnits(lengthMm)))].toSorted((a, b) => a - b);
  return lengths.map((length) => {
    const alike = stock.filter(({ lengthMm }) => inUnits(lengthMm) === length);
    const ids = alike.flatMap(({ id, count }) => Array.from({ length: count }, () => id));
    return { lengthMm: length / PER_MM, count: ids.length, ids };
  });
}

function barsOf(
  plan: readonly Pattern[],
  { sizes }: CutProblem,
  lengths: readonly number[],
  kinds: readonly StockKind[],
  wanted: readonly WantedPiece[],
  { kerfMm, endTrimMm, reuseMm }: CutSettings,
): CutBar[] {
  const waiting = lengths.map((length) =>
    wanted
      .filter(({ lengthMm }) => inUnits(lengthMm + kerfMm) === length)
      .flatMap(({ id, lengthMm, count }) => Array.from({ length: count }, () => ({ id, lengthMm }))),
  );
  const ids = kinds.map((kind) => [...kind.ids]);
  return plan.map(({ stock, counts }) => {
    const lengthMm = kinds[stock]?.lengthMm ?? 0;
    // A pattern may hold more of a size than was still wanted; the surplus is not cut.
    const pieces = sizes.flatMap((_, size) => waiting[size]?.splice(0, counts[size] ?? 0) ?? []);
    const free = inUnits(lengthMm - endTrimMm) - pieces.reduce((sum, piece) => sum + inUnits(piece.lengthMm), 0);
    const lost = Math.min(free, pieces.length * inUnits(kerfMm));
    const offcutMm = (free - lost) / PER_MM;
    return {
      stockId: ids[stock]?.shift() ?? null,
      lengthMm,
      pieces,
      kerfMm: lost / PER_MM,
      trimMm: endTrimMm,
      offcutMm,
      isKept: offcutMm > 0 && offcutMm >= reuseMm,
    };
  });
}

function countOf(pieces: readonly WantedPiece[], isMeant: (piece: WantedPiece) => boolean): number {
  return pieces.filter(isMeant).reduce((sum, { count }) => sum + count, 0);
}

function inUnits(lengthMm: number): number {
  return Math.round(lengthMm * PER_MM);
}

function requireFigures(
  stock: readonly StockLength[],
  pieces: readonly WantedPiece[],
  { kerfMm, endTrimMm, reuseMm, buyMm }: CutSettings,
): void {
  for (const { lengthMm, count } of [...stock, ...pieces]) {
    if (!(lengthMm > 0 && Number.isFinite(lengthMm) && Number.isInteger(count) && count >= 0)) {
      throw new RangeError(`cutList needs lengths above 0 and whole counts, got ${lengthMm}, ${count}`);
    }
  }
  if (!(kerfMm >= 0 && endTrimMm >= 0 && reuseMm >= 0 && (buyMm === null || buyMm > 0))) {
    throw new RangeError(`cutList needs settings of 0 or more, got ${kerfMm}, ${endTrimMm}, ${reuseMm}, ${buyMm}`);
  }
}
