import type { BallastItem } from '@/lib/geometry/ballast';
import { type Body, bodyFromProfile } from '@/lib/geometry/body';
import type { CarriedItem } from '@/lib/geometry/flotation';
import type { DragSteps } from '@/lib/geometry/hole-drag';
import { BondBook, type BondPulls } from '@/lib/spec/bond-book';
import type { Finding } from '@/lib/spec/finding';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import type { WoodChoice } from '@/lib/strength/what-would-hold';
import type { WireChoice } from '@/lib/strength/wire-choice';
import { inches } from '@/lib/units/force-and-length';
import type { Instant } from '@/lib/units/instant';
import type { LengthUnit, UnitChoice } from '@/lib/units/unit-choice';

/** Everything the browser needs to judge a spec while it is tried out: plain data from the server. */
export interface TryoutWorld {
  readonly model: SpecModel;
  readonly settings: SpecSettings;
  /** The shop's pulls of the bonds this model has. */
  readonly pulls: readonly BondPulls[];
  readonly lotInUse: readonly (readonly [materialId: string, lotCode: string])[];
  readonly wires: readonly WireChoice[];
  readonly woods: readonly WoodChoice[];
  readonly now: Instant;
  /** What was found of the spec as it is saved, the comparison with the shop's other models among it. */
  readonly savedFindings: readonly Finding[];
  /** Null: nobody has said whether there is ballast. */
  readonly ballast: readonly BallastItem[] | null;
  /** Hooks, rings and eyes where they hang, as far as their mass is known. */
  readonly hardware: readonly CarriedItem[];
  readonly units: UnitChoice;
  /** When the draft was last changed as this page saw it; null: a frozen revision, nothing can be saved. */
  readonly seenAt: Instant | null;
}

/**
 * The rules' context in the browser. The shop's other models are not here: what is found by comparing with them stays
 * as it was saved.
 */
export function tryoutContext(world: TryoutWorld, withRemedies: boolean): SpecContext {
  const { settings, pulls, lotInUse, wires, woods, now } = world;
  return {
    settings,
    bonds: new BondBook(pulls, settings.strength),
    shopUse: null,
    lotInUse: new Map(lotInUse),
    wires,
    woods,
    now,
    withRemedies,
  };
}

/** The body of a spec, or null where it is not measured or cannot be one. */
export function bodyOf({ body }: SpecModel): Body | null {
  if (body === null) return null;
  const check = bodyFromProfile(body.stations, body.lengthMm);
  return check.ok ? check.body : null;
}

/** Steps of dragging: the shop's increment of depth, places to a 32nd or half a millimetre, whole degrees. */
export function dragSteps(unit: LengthUnit, incrementMm: number): DragSteps {
  return { depthMm: unit === 'inch' ? incrementMm : 0.5, placeMm: unit === 'inch' ? inches(1 / 32) : 0.5, angleDeg: 1 };
}
