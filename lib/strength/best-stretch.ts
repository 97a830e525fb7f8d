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
  for (const cell of cells) {
    if (cell !== first) return new UnevenShank(cells, stepMm, lengthMm, saturationMm);
  }
  return new EvenShank(first, lengthMm, saturationMm);
}

/** A shank of one resistance throughout: all of it carries. */
class EvenShank implements StretchTable {
  constructor(
    private readonly cell: number,
    private readonly lengthMm: number,
    private readonly saturationMm: number,
  ) {}

  best(fromMm: number): Stretch {
    const { cell, lengthMm, saturationMm } = this;
    const from = Math.min(Math.max(0, fromMm), lengthMm);
    return { value: cell * effectiveLengthMm(lengthMm - from, saturationMm), fromMm: from, toMm: lengthMm };
  }
}

class UnevenShank implements StretchTable {
  /** Effective length of so many whole steps and one more. */
  private readonly reach: number[] = [];
  /** The strongest stretch that starts at or below each step. */
  private readonly below: Stretch[] = [];

  constructor(
    private readonly cells: readonly number[],
    private readonly stepMm: number,
    private readonly lengthMm: number,
    private readonly saturationMm: number,
  ) {
    for (let k = 0; k < cells.length; k++) this.reach.push(effectiveLengthMm((k + 1) * stepMm, saturationMm));
    let best = this.nothing();
    for (let k = cells.length - 1; k >= 0; k--) {
      const here = this.startingAt(k * stepMm, k);
      if (here.value >= best.value) best = here;
      this.below[k] = best;
    }
  }

  best(fromMm: number): Stretch {
    if (fromMm >= this.lengthMm) return this.nothing();
    if (fromMm <= 0) return this.below[0] ?? this.nothing();
    const cell = Math.floor(fromMm / this.stepMm);
    const here = this.startingAt(fromMm, cell);
    const deeper = this.below[cell + 1] ?? this.nothing();
    return here.value >= deeper.value ? here : deeper;
  }

  private nothing(): Stretch {
    return { value: 0, fromMm: this.lengthMm, toMm: this.lengthMm };
  }

  private startingAt(fromMm: number, cell: number): Stretch {
    const { cells, stepMm, lengthMm } = this;
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
      const length = isWhole ? (this.reach[k - cell] ?? 0) : effectiveLengthMm(toMm - fromMm, this.saturationMm);
      if (weakest * length > value) {
        value = weakest * length;
        reached = toMm;
      }
    }
    return { value, fromMm, toMm: reached };
  }
}
