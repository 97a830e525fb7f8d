import type { BondBook } from '@/lib/spec/bond-book';
import type { ShopUse } from '@/lib/spec/shop-use';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import type { WoodChoice } from '@/lib/strength/what-would-hold';
import type { WireChoice } from '@/lib/strength/wire-choice';
import type { Instant } from '@/lib/units/instant';

/** What the rules know of the shop beside the model. */
export interface SpecContext {
  readonly settings: SpecSettings;
  readonly bonds: BondBook;
  /** What wires go with which bit, glue and depth over all models; null: not asked. */
  readonly shopUse: ShopUse | null;
  /** Adhesive lot in use by material. */
  readonly lotInUse: ReadonlyMap<string, string>;
  /** What a fix may offer. */
  readonly wires: readonly WireChoice[];
  readonly woods: readonly WoodChoice[];
  readonly now: Instant;
  /** Whether a short is given the change that would make it hold, which costs some milliseconds a model. */
  readonly withRemedies: boolean;
}
