/** Most entries that are kept; beyond it all are dropped and worked out again. */
const GREATEST_ENTRIES = 20_000;

/** Something worked out once for each key: the revisions of a model share most of their parts. */
export class SpecMemo<Value> {
  private readonly byKey = new Map<string, Value>();
  private made = 0;

  /** `work` is given a number that no other value of this memo was made with. */
  of(key: string, work: (serial: number) => Value): Value {
    const known = this.byKey.get(key);
    if (known !== undefined) return known;
    const value = work(this.made++);
    if (this.byKey.size >= GREATEST_ENTRIES) this.byKey.clear();
    this.byKey.set(key, value);
    return value;
  }
}
