import type { BallastItem } from '@/lib/geometry/ballast';
import { type Body, bodyFromProfile } from '@/lib/geometry/body';
import type { DragSteps } from '@/lib/geometry/hole-drag';
import type { SpecShop } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { inches } from '@/lib/units/force-and-length';
import type { Instant } from '@/lib/units/instant';
import type { LengthUnit, UnitChoice } from '@/lib/units/unit-choice';

/** Everything the browser needs to judge a spec while it is tried out: plain data from the server. */
export interface TryoutWorld {
  readonly model: SpecModel;
  readonly shop: SpecShop;
  /** Null: nobody has said whether there is ballast. */
  readonly ballast: readonly BallastItem[] | null;
  readonly units: UnitChoice;
  /** When the draft was last changed as this page saw it; null: a frozen revision, nothing can be saved. */
  readonly seenAt: Instant | null;
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
