/** Most entries that are kept; beyond it all are dropped and worked out again. */
const GREATEST_ENTRIES = 4_000;

/** Something worked out once for each key: the revisions of a model share most of their parts. */
export class SpecMemo<Key, Value> {
  private readonly byKey = new Map<Key, Value>();

  of(key: Key, work: () => Value): Value {
    const known = this.byKey.get(key);
    if (known !== undefined) return known;
    const value = work();
    if (this.byKey.size >= GREATEST_ENTRIES) this.byKey.clear();
    this.byKey.set(key, value);
    return value;
  }
}
