import { BondBook, type BondPulls } from '@/lib/spec/bond-book';
import { type RuleFigures, specSettingsOf } from '@/lib/spec/rule-figures';
import { ShopUse } from '@/lib/spec/shop-use';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { WoodChoice } from '@/lib/strength/what-would-hold';
import type { WireChoice } from '@/lib/strength/wire-choice';
import type { Instant } from '@/lib/units/instant';

/** What the rules know of the shop, as plain data that can be sent to a browser. */
export interface SpecWorld {
  readonly figures: RuleFigures;
  readonly bondPulls: readonly BondPulls[];
  /** The revisions in use, one a model; null: not asked. */
  readonly inUse: readonly SpecModel[] | null;
  /** Adhesive lot in use: [material, code of the lot]. */
  readonly lotsInUse: readonly (readonly [string, string])[];
  readonly wires: readonly WireChoice[];
  readonly woods: readonly WoodChoice[];
  readonly now: Instant;
}

/** The shop as the rules ask for it. Make it once and judge many models by it. */
export function specContextOf(world: SpecWorld, withRemedies: boolean): SpecContext {
  const settings = specSettingsOf(world.figures);
  return {
    settings,
    bonds: new BondBook(world.bondPulls, settings.strength),
    shopUse: world.inUse === null ? null : new ShopUse(world.inUse),
    lotInUse: new Map(world.lotsInUse),
    wires: world.wires,
    woods: world.woods,
    now: world.now,
    withRemedies,
  };
}

/** The world cut down to what one model's findings need, so that little has to be sent to a browser. */
export function worldForModel(world: SpecWorld, model: SpecModel): SpecWorld {
  const wires = new Set(model.anchors.map((anchor) => anchor.wire?.materialId));
  const inUse =
    world.inUse?.flatMap((other) => {
      const anchors = other.anchors.filter((anchor) => wires.has(anchor.wire?.materialId));
      const isAlone = anchors.length === 0 || other.modelId === model.modelId;
      return isAlone ? [] : [{ ...other, body: null, wood: null, bill: null, anchors }];
    }) ?? null;
  const woodId = model.wood?.materialId;
  return {
    ...world,
    inUse: inUse === null ? null : [...inUse, model],
    bondPulls: world.bondPulls.filter((pulls) => pulls.woodMaterialId === woodId),
  };
}
