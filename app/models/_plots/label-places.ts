/**
 * Heights of labels beside the ends of their lines: as near to where they are wanted as they can be without standing
 * on each other or leaving the plot. In the order of `wanted`; px, downwards.
 *
 * Too many labels for the height keep their order and share what room there is.
 */
export function labelPlaces(
  wanted: readonly number[],
  { gap, low, high }: { readonly gap: number; readonly low: number; readonly high: number },
): readonly number[] {
  const room = Math.max(0, high - low);
  const step = wanted.length > 1 ? Math.min(gap, room / (wanted.length - 1)) : gap;
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y || a.index - b.index);
  const places: number[] = [];
  let least = low;
  for (const [k, { y }] of order.entries()) {
    places[k] = Math.max(least, Math.min(high, y));
    least = (places[k] ?? 0) + step;
  }
  let most = high;
  for (let k = order.length - 1; k >= 0; k -= 1) {
    places[k] = Math.min(most, places[k] ?? most);
    most = (places[k] ?? 0) - step;
  }
  const result: number[] = [];
  for (const [k, { index }] of order.entries()) result[index] = places[k] ?? low;
  return result;
}
