import type { BondClass } from '@/lib/materials/adhesive-strength-sheet';
import type { BondBelief } from '@/lib/strength/bond-belief';
import type { KappaReading } from '@/lib/strength/kappa-posterior';
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

/** What is believed of one kind of bond, and what it rests on. */
export interface BondEntry {
  /** Null: neither prior nor pulls speak. */
  readonly belief: BondBelief | null;
  /** Null: no pulls. */
  readonly latestPulledAt: Instant | null;
  readonly adhesiveLotCodes: readonly string[];
}

/** Beliefs of a shop, each worked out once. */
export class BondBook {
  private readonly byKey = new Map<string, BondEntry>();
  private readonly byClass = new Map<BondClass, BondEntry>();

  constructor(
    pulls: readonly BondPulls[],
    private readonly settings: StrengthSettings,
  ) {
    for (const of of pulls) {
      const readings = of.pulls.flatMap((pull) => kappaReading(pull, settings.saturationMm) ?? []);
      if (readings.length === 0) continue;
      const { latestPulledAt, adhesiveLotCodes } = of;
      this.byKey.set(keyOf(of), { belief: this.belief(of.bondClass, readings), latestPulledAt, adhesiveLotCodes });
    }
  }

  /** What is believed of a bond: after the shop's own pulls of it, else by the adhesive's class alone. */
  entry(key: BondKey, bondClass: BondClass): BondEntry {
    const own = this.byKey.get(keyOf(key));
    if (own !== undefined) return own;
    let prior = this.byClass.get(bondClass);
    if (prior === undefined) {
      prior = { belief: this.belief(bondClass, []), latestPulledAt: null, adhesiveLotCodes: [] };
      this.byClass.set(bondClass, prior);
    }
    return prior;
  }

  private belief(bondClass: BondClass, readings: readonly KappaReading[]): BondBelief | null {
    return updatedBelief(kappaPrior(bondClass), readings, this.settings.lower);
  }
}

function keyOf({ woodMaterialId, adhesiveMaterialId, wireMaterialId }: BondKey): string {
  return `${woodMaterialId}\n${adhesiveMaterialId}\n${wireMaterialId}`;
}
