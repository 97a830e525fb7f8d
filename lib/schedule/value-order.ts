/** Compares two values level by level: negative where `a` is better. */
export function compareValues(a: Float64Array, b: Float64Array): number {
  for (let level = 0; level < a.length; level++) {
    const difference = (a[level] ?? 0) - (b[level] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
