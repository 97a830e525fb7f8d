/** A stretch of shank that carries alone. */
export interface Stretch {
  /** Effective length times the weakest resistance in it. */
  readonly value: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** The strongest stretch below any depth, for one shank and one kind of resistance. */
export interface StretchTable {
  best(fromMm: number): Stretch;
}

/** Length of shank that counts, when its resistance saturates over `saturationMm`; infinite: all of it. */
export function effectiveLengthMm(lengthMm: number, saturationMm: number): number {
  if (saturationMm === Number.POSITIVE_INFINITY) return lengthMm;
  return saturationMm * Math.tanh(lengthMm / saturationMm);
}

/**
 * How much a shank carries when its resistance differs along it. A stretch is as strong as its weakest section: once
 * that splits, the crack runs along it. The shank carries what its strongest stretch carries, because a part in solid
 * wood holds whatever the rest does. So a shank never loses by being longer, and a long one that is thin throughout
 * can come out below a short one in solid wood.
 *
 * `cells`: resistance of each step of `stepMm` from the mouth down, in order. The result is in their unit times mm.
 */
export function stretchTable(
  cells: readonly number[],
  stepMm: number,
  lengthMm: number,
  saturationMm: number,
): StretchTable {
  const first = cells[0] ?? 0;
  if (cells.every((cell) => cell === first)) {
    return {
      best: (fromMm) => {
        const from = Math.min(Math.max(0, fromMm), lengthMm);
        return { value: first * effectiveLengthMm(lengthMm - from, saturationMm), fromMm: from, toMm: lengthMm };
      },
    };
  }
  const reach = cells.map((_, k) => effectiveLengthMm((k + 1) * stepMm, saturationMm));
  const startingAt = (fromMm: number, cell: number): Stretch => {
    const isOnStep = fromMm === cell * stepMm;
    let weakest = cells[cell] ?? 0;
    let value = 0;
    let reached = fromMm;
    for (let k = cell; k < cells.length; k++) {
      weakest = Math.min(weakest, cells[k] ?? 0);
      // Among ends with the same weakest section the deepest is the best: only there the length is worked out.
      if ((cells[k + 1] ?? 0) >= weakest && k + 1 < cells.length) continue;
      const toMm = Math.min(lengthMm, (k + 1) * stepMm);
      const isWhole = isOnStep && toMm < lengthMm;
      const length = isWhole ? (reach[k - cell] ?? 0) : effectiveLengthMm(toMm - fromMm, saturationMm);
      if (weakest * length > value) {
        value = weakest * length;
        reached = toMm;
      }
    }
    return { value, fromMm, toMm: reached };
  };
  const below: Stretch[] = [];
  let best: Stretch = { value: 0, fromMm: lengthMm, toMm: lengthMm };
  for (let k = cells.length - 1; k >= 0; k--) {
    const here = startingAt(k * stepMm, k);
    if (here.value >= best.value) best = here;
    below[k] = best;
  }
  return {
    best: (fromMm) => {
      const nothing: Stretch = { value: 0, fromMm: lengthMm, toMm: lengthMm };
      if (fromMm >= lengthMm) return nothing;
      if (fromMm <= 0) return below[0] ?? nothing;
      const cell = Math.floor(fromMm / stepMm);
      const here = startingAt(fromMm, cell);
      const deeper = below[cell + 1] ?? nothing;
      return here.value >= deeper.value ? here : deeper;
    },
  };
}
