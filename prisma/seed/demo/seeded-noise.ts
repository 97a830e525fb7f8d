/**
 * Noise that is the same at every call with the same seed: n numbers spread over -1 to 1 with most of them near 0
 * (the mean of three even ones). The generator is mulberry32, 32 bits of state: good for a look of life, not for more.
 */
export function seededNoise(seed: number, count: number): number[] {
  let state = seed | 0;
  const even = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
  return Array.from({ length: count }, () => (even() + even() + even()) / 3);
}
