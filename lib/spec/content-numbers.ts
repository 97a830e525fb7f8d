/** Most texts that are kept; beyond it numbering goes on with an empty book, and equal things count as different. */
const GREATEST_ENTRIES = 20_000;

/**
 * A number for each content: the same for two objects that say the same, so that a memo's keys stay short. An object
 * that was seen before is known by itself, and must not be changed afterwards.
 */
export class ContentNumbers {
  private readonly byObject = new WeakMap<object, number>();
  private readonly byText = new Map<string, number>();
  private next = 1;

  /** 0 for null. */
  of(content: object | null): number {
    if (content === null) return 0;
    const known = this.byObject.get(content);
    if (known !== undefined) return known;
    const number = this.ofText(textOf(content));
    this.byObject.set(content, number);
    return number;
  }

  private ofText(text: string): number {
    const known = this.byText.get(text);
    if (known !== undefined) return known;
    if (this.byText.size >= GREATEST_ENTRIES) this.byText.clear();
    this.byText.set(text, this.next);
    return this.next++;
  }
}

/** JSON writes NaN and infinity as null, which for a figure means something else. */
function textOf(content: object): string {
  return JSON.stringify(content, (_key, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );
}
