import { resolveWire } from '@/lib/materials/resolved-wire';
import { resolveWood, type WoodResolution } from '@/lib/materials/resolved-wood';
import type { WireSheet } from '@/lib/materials/wire-sheet';
import type { AnchorMechanics } from '@/lib/spec/anchor-mechanics';
import { BodyBook } from '@/lib/spec/body-book';
import { BondBook, type PulledBond } from '@/lib/spec/bond-book';
import { ContentNumbers } from '@/lib/spec/content-numbers';
import { ShopUse, type WireHabit } from '@/lib/spec/shop-use';
import { SpecMemo } from '@/lib/spec/spec-memo';
import type { SpecMaterial, SpecWood } from '@/lib/spec/spec-model';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import type { WoodChoice } from '@/lib/strength/what-would-hold';
import type { WireChoice } from '@/lib/strength/wire-choice';
import type { Instant } from '@/lib/units/instant';

/** What the rules know of the shop beside the model. Plain data: it may go to a browser. */
export interface SpecShop {
  readonly settings: SpecSettings;
  /** The bonds that the shop has pulled. */
  readonly bonds: readonly PulledBond[];
  /** What wires go with which bit, glue and depth over all models; null: not asked. */
  readonly habits: readonly WireHabit[] | null;
  /** The lot in use of each adhesive that has one open. */
  readonly lotsInUse: readonly { readonly materialId: string; readonly lotCode: string }[];
  /** What a fix may offer. */
  readonly wires: readonly SpecMaterial<WireSheet>[];
  readonly woods: readonly SpecWood[];
  readonly now: Instant;
}

/** What a fix may offer, with its strength worked out. */
export interface OfferedWire extends WireChoice {
  readonly material: SpecMaterial<WireSheet>;
}

export interface OfferedWood extends WoodChoice {
  readonly material: SpecWood;
}

/** The shop ready to judge by: make one and judge many models with it, for what was worked out is kept. */
export interface SpecContext extends Pick<SpecShop, 'settings' | 'now'> {
  readonly bonds: BondBook;
  readonly shopUse: ShopUse | null;
  readonly lotInUse: ReadonlyMap<string, string>;
  readonly wires: readonly OfferedWire[];
  readonly woods: readonly OfferedWood[];
  /** Whether a short is given the fixes that need a search, which costs some milliseconds a model. */
  readonly withFixes: boolean;
  readonly bodies: BodyBook;
  readonly anchorMemo: SpecMemo<string, AnchorMechanics>;
  readonly woodMemo: SpecMemo<string, WoodResolution | null>;
  readonly numbers: ContentNumbers;
}

/** `withFixes` false for whole shops and while something is dragged. */
export function specContext(shop: SpecShop, { withFixes }: { readonly withFixes: boolean }): SpecContext {
  return {
    settings: shop.settings,
    now: shop.now,
    bonds: new BondBook(shop.bonds, shop.settings.strength),
    shopUse: shop.habits === null ? null : new ShopUse(shop.habits),
    lotInUse: new Map(shop.lotsInUse.map(({ materialId, lotCode }) => [materialId, lotCode])),
    wires: shop.wires.flatMap(offeredWire),
    woods: shop.woods.flatMap(offeredWood),
    withFixes,
    bodies: new BodyBook(),
    anchorMemo: new SpecMemo(),
    woodMemo: new SpecMemo(),
    numbers: new ContentNumbers(),
  };
}

function offeredWire(material: SpecMaterial<WireSheet>): readonly OfferedWire[] {
  if (material.sheet === null) return [];
  const resolved = resolveWire(material.sheet, material.sheet.diameterMm);
  return resolved.ok ? [{ id: material.materialId, name: material.name, wire: resolved.wire, material }] : [];
}

function offeredWood(material: SpecWood): readonly OfferedWood[] {
  if (material.sheet === null) return [];
  const resolved = resolveWood(material.sheet, material);
  return resolved.ok ? [{ id: material.materialId, wood: resolved.wood, material }] : [];
}
