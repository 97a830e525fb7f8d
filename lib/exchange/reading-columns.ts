/** Rows of a log, held column by column in plain numbers, so that a million of them fit in some thirty megabytes. */
export interface ReadingColumns {
  /** Instants, UTC ms, strictly rising. */
  readonly at: Float64Array;
  /** degC. */
  readonly temperatureC: Float64Array;
  /** Relative humidity in percent, NaN where there is none; null when no row has any. */
  readonly humidityPct: Float64Array | null;
}

/** Rows as they are read, in file order, growing as needed. */
export class RowColumns {
  count = 0;
  #at = new Float64Array(1024);
  #otherAt: Float64Array | null;
  #temperatureC = new Float64Array(1024);
  #humidityPct: Float64Array | null;
  #line = new Uint32Array(1024);

  /** `hasOtherAt`: whether a second instant (under the other order of day and month) is kept with each row. */
  constructor(hasOtherAt: boolean, hasHumidity: boolean) {
    this.#otherAt = hasOtherAt ? new Float64Array(1024) : null;
    this.#humidityPct = hasHumidity ? new Float64Array(1024) : null;
  }

  add(at: number, otherAt: number, temperatureC: number, humidityPct: number, line: number): void {
    if (this.count === this.#at.length) this.#grow();
    this.#at[this.count] = at;
    if (this.#otherAt !== null) this.#otherAt[this.count] = otherAt;
    this.#temperatureC[this.count] = temperatureC;
    if (this.#humidityPct !== null) this.#humidityPct[this.count] = humidityPct;
    this.#line[this.count] = line;
    this.count += 1;
  }

  get at(): Float64Array {
    return this.#at.subarray(0, this.count);
  }

  /** Instants under the other order; the same as `at` where none are kept. */
  get otherAt(): Float64Array {
    return (this.#otherAt ?? this.#at).subarray(0, this.count);
  }

  get temperatureC(): Float64Array {
    return this.#temperatureC.subarray(0, this.count);
  }

  get humidityPct(): Float64Array | null {
    return this.#humidityPct?.subarray(0, this.count) ?? null;
  }

  /** Line of each row in the file, from 1. */
  get line(): Uint32Array {
    return this.#line.subarray(0, this.count);
  }

  #grow(): void {
    const size = this.#at.length * 2;
    this.#at = grown(this.#at, size);
    this.#temperatureC = grown(this.#temperatureC, size);
    if (this.#otherAt !== null) this.#otherAt = grown(this.#otherAt, size);
    if (this.#humidityPct !== null) this.#humidityPct = grown(this.#humidityPct, size);
    const line = new Uint32Array(size);
    line.set(this.#line);
    this.#line = line;
  }
}

function grown(column: Float64Array, size: number): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(size);
  larger.set(column);
  return larger;
}
