/**
 * A stream of numbers in [0, 1) that is the same for the same seed on every machine. Not for secrets.
 * Source: mulberry32, a public-domain generator (from memory); seed 42 begins 2581720956, 1925393290, 3661312704 in
 * units of 2^-32.
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
