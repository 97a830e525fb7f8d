import type { BondClass } from '@/lib/materials/adhesive-strength-sheet';
import type { BondBelief } from '@/lib/strength/bond-belief';
import { kappaPrior } from '@/lib/strength/kappa-prior';
import { kappaReading, type PullReading } from '@/lib/strength/pull-reading';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { updatedBelief } from '@/lib/strength/updated-belief';
import type { Instant } from '@/lib/units/instant';

/** What a bond is known by: wood, adhesive and wire. */
export interface BondKey {
  readonly woodMaterialId: string;
  readonly adhesiveMaterialId: string;
  readonly wireMaterialId: string;
}

/** The shop's pulls of one kind of bond. */
export interface BondPulls extends BondKey {
  readonly bondClass: BondClass;
  readonly pulls: readonly PullReading[];
  readonly latestPulledAt: Instant;
  /** Lots of adhesive that were pulled. */
  readonly adhesiveLotCodes: readonly string[];
}

/** What is believed of one kind of bond, and what it rests on. Plain data. */
export interface BondEvidence {
  /** Null: neither prior nor pulls speak. */
  readonly belief: BondBelief | null;
  /** Null: no pulls. */
  readonly latestPulledAt: Instant | null;
  readonly adhesiveLotCodes: readonly string[];
}

export interface PulledBond extends BondKey, BondEvidence {}

/** What the pulls of one kind of bond say; null if none of them counts. */
export function pulledBond(of: BondPulls, settings: StrengthSettings): PulledBond | null {
  const readings = of.pulls.flatMap((pull) => kappaReading(pull, settings.saturationMm) ?? []);
  if (readings.length === 0) return null;
  const { woodMaterialId, adhesiveMaterialId, wireMaterialId, latestPulledAt, adhesiveLotCodes } = of;
  const belief = updatedBelief(kappaPrior(of.bondClass), readings, settings.lower);
  return { woodMaterialId, adhesiveMaterialId, wireMaterialId, belief, latestPulledAt, adhesiveLotCodes };
}

/** Beliefs of a shop: of the bonds it has pulled, and of the others by the adhesive's class alone. */
export class BondBook {
  private readonly byKey: ReadonlyMap<string, BondEvidence>;
  private readonly byClass = new Map<BondClass, BondEvidence>();

  constructor(
    pulled: readonly PulledBond[],
    private readonly settings: StrengthSettings,
  ) {
    this.byKey = new Map(pulled.map((bond) => [keyOf(bond), bond]));
  }

  evidence(key: BondKey, bondClass: BondClass): BondEvidence {
    const own = this.byKey.get(keyOf(key));
    if (own !== undefined) return own;
    let prior = this.byClass.get(bondClass);
    if (prior === undefined) {
      const belief = updatedBelief(kappaPrior(bondClass), [], this.settings.lower);
      prior = { belief, latestPulledAt: null, adhesiveLotCodes: [] };
      this.byClass.set(bondClass, prior);
    }
    return prior;
  }
}

function keyOf({ woodMaterialId, adhesiveMaterialId, wireMaterialId }: BondKey): string {
  return `${woodMaterialId}\n${adhesiveMaterialId}\n${wireMaterialId}`;
}
