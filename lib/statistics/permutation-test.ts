import { seededRandom } from '@/lib/statistics/seeded-random';
import { centre } from '@/lib/statistics/summary';
import type { TableReading } from '@/lib/statistics/two-way-fit';

export interface PermutationTest {
  /** Share of the rearrangements in which some block lies as far out as the furthest does here, or further. */
  readonly p: number;
  /** True where every rearrangement was counted, false where `arrangements` were drawn at random. */
  readonly isExact: boolean;
  readonly arrangements: number;
}

/** Up to this many rearrangements are counted one by one. Chosen: a few milliseconds. */
const MOST_COUNTED = 50_000;
/** Otherwise so many are drawn, fewer where a table is large, so that no more than this many readings are dealt out. */
const DRAWN = { most: 4_999, least: 999 } as const;
const MOST_DEALT = 2_000_000;

/**
 * Whether the blocks of a table differ at all, without assuming how readings scatter: within each treatment the
 * readings are dealt out again to its blocks in every possible way, and the block furthest from the rest is looked for
 * each time. Null where there is only one block or nothing to rearrange.
 *
 * Where there are too many ways, 999 to 4,999 are drawn with `seed`, and p counts the table itself as one more.
 * Source: R. A. Fisher's randomisation test with a treatment as the stratum (from memory).
 */
export function permutationTest(readings: readonly TableReading[], seed: number): PermutationTest | null {
  const strata = strataOf(readings);
  const weight = blockWeights(readings, strata);
  if (weight.filter((w) => w > 0).length < 2) return null;
  const totals = new Float64Array(weight.length);
  for (const stratum of strata) addScores(totals, stratum.blocks, stratum.scores);
  const seen = furthestOf(totals, weight);
  const size = readings.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0);
  if (!(seen > 1e-12 * size)) return null;
  const limit = seen * (1 - 1e-10);
  // In a complete table only what the treatments do against each other counts: the first may stay as it is.
  const isComplete = strata.every(
    ({ blocks }) => blocks.length === weight.length && new Set(blocks).size === weight.length,
  );
  const counted = isComplete ? strata.slice(1) : strata;
  const ways = counted.reduce((product, { scores }) => product * factorial(scores.length), 1);
  if (ways <= MOST_COUNTED) {
    const start = new Float64Array(weight.length);
    if (isComplete && strata[0] !== undefined) addScores(start, strata[0].blocks, strata[0].scores);
    const orders = counted.map(({ scores }) => permutations(scores));
    const reached = countReached(counted, orders, 0, start, weight, limit);
    return { p: reached / ways, isExact: true, arrangements: ways };
  }
  const drawn = Math.max(DRAWN.least, Math.min(DRAWN.most, Math.floor(MOST_DEALT / readings.length)));
  const random = seededRandom(seed);
  let reached = 1;
  for (let draw = 0; draw < drawn; draw++) {
    const dealt = new Float64Array(weight.length);
    for (const { blocks, scores } of strata) addScores(dealt, blocks, shuffled(scores, random));
    if (furthestOf(dealt, weight) >= limit) reached += 1;
  }
  return { p: reached / (drawn + 1), isExact: false, arrangements: drawn };
}

/** The readings of one treatment: where they lie, and their deviations from its mean. */
interface Stratum {
  readonly blocks: readonly number[];
  readonly scores: readonly number[];
}

function strataOf(readings: readonly TableReading[]): Stratum[] {
  const groups = new Map<number, TableReading[]>();
  for (const reading of readings) {
    const group = groups.get(reading.treatment);
    if (group === undefined) groups.set(reading.treatment, [reading]);
    else group.push(reading);
  }
  return [...groups.values()].map((group) => {
    const mean = centre(group.map(({ y }) => y));
    return { blocks: group.map(({ block }) => block), scores: group.map(({ y }) => y - mean) };
  });
}

/** Variance of each block's total under rearrangement, in units of a reading's; 0 for a block that cannot move. */
function blockWeights(readings: readonly TableReading[], strata: readonly Stratum[]): number[] {
  const weight = new Array<number>(readings.reduce((most, { block }) => Math.max(most, block), -1) + 1).fill(0);
  for (const { blocks } of strata) {
    for (const block of blocks) {
      const own = blocks.filter((other) => other === block).length;
      weight[block] = (weight[block] ?? 0) + 1 - own / blocks.length;
    }
  }
  return weight;
}

function addScores(totals: Float64Array, blocks: readonly number[], scores: readonly number[]): void {
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i] ?? 0;
    totals[block] = (totals[block] ?? 0) + (scores[i] ?? 0);
  }
}

function furthestOf(totals: Float64Array, weight: readonly number[]): number {
  let most = 0;
  for (let i = 0; i < weight.length; i++) {
    const w = weight[i] ?? 0;
    if (w > 0) most = Math.max(most, Math.abs(totals[i] ?? 0) / Math.sqrt(w));
  }
  return most;
}

function countReached(
  strata: readonly Stratum[],
  orders: readonly (readonly (readonly number[])[])[],
  depth: number,
  totals: Float64Array,
  weight: readonly number[],
  limit: number,
): number {
  const stratum = strata[depth];
  if (stratum === undefined) return furthestOf(totals, weight) >= limit ? 1 : 0;
  let reached = 0;
  for (const order of orders[depth] ?? []) {
    const next = totals.slice();
    addScores(next, stratum.blocks, order);
    reached += countReached(strata, orders, depth + 1, next, weight, limit);
  }
  return reached;
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

function permutations(values: readonly number[]): number[][] {
  if (values.length <= 1) return [[...values]];
  return values.flatMap((value, i) =>
    permutations([...values.slice(0, i), ...values.slice(i + 1)]).map((rest) => [value, ...rest]),
  );
}

function shuffled(values: readonly number[], random: () => number): number[] {
  const dealt = [...values];
  for (let i = dealt.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [dealt[i], dealt[j]] = [dealt[j] ?? 0, dealt[i] ?? 0];
  }
  return dealt;
}
