import type { RateLaw } from '@/lib/cure/adhesive-sheet';
import { temperatureDifferenceText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

/** How the rate of cure follows temperature, in one sentence. */
export function rateLawText(law: RateLaw, { temperatureUnit }: UnitChoice): string {
  switch (law.kind) {
    case 'arrhenius': {
      const { low, central, high } = law.activationEnergyKjPerMol;
      return `Arrhenius, activation energy ${central.toFixed(1)} kJ/mol, between ${low.toFixed(1)} and ${high.toFixed(1)}`;
    }
    case 'doubling': {
      const { low, central, high } = law.doublingC;
      const text = (degrees: number) => temperatureDifferenceText(degrees, temperatureUnit);
      return `doubles every ${text(central)}, between ${text(low)} and ${text(high)}`;
    }
    case 'plain-hours':
      return 'does not follow temperature alone: plain hours';
  }
}
