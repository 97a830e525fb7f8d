/**
 * The non-decreasing values nearest to y by weighted least squares, pooling neighbours that fall (pool adjacent
 * violators). As long as y; `weights` positive, default 1. [1, 0, 4, 3] gives [0.5, 0.5, 3.5, 3.5].
 *
 * Throws RangeError for weights that are not positive or not as many as y.
 * Source: R. E. Barlow and others, Statistical Inference under Order Restrictions (1972), from memory.
 */
export function isotonicRegression(y: readonly number[], weights?: readonly number[]): number[] {
  if (weights !== undefined && (weights.length !== y.length || !weights.every((w) => w > 0))) {
    throw new RangeError('isotonicRegression needs one positive weight for each value');
  }
  const pools: { value: number; weight: number; count: number }[] = [];
  y.forEach((value, i) => {
    let pool = { value, weight: weights?.[i] ?? 1, count: 1 };
    for (let before = pools.at(-1); before !== undefined && before.value >= pool.value; before = pools.at(-1)) {
      pools.pop();
      const weight = before.weight + pool.weight;
      const value = (before.value * before.weight + pool.value * pool.weight) / weight;
      pool = { value, weight, count: before.count + pool.count };
    }
    pools.push(pool);
  });
  return pools.flatMap((pool) => new Array<number>(pool.count).fill(pool.value));
}
