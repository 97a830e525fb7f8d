import { lengthText, massText } from '@/lib/units/format-quantity';
import { lengthInput, massInput, plainDecimals } from '@/lib/units/quantity-input';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { StockUnit } from './ledger';

/** A quantity of stock in the shop's units: `480.0 g`, `2 1/2"`, `12 pieces`. RangeError for NaN and infinity. */
export function stockText(quantity: number, unit: StockUnit, units: UnitChoice): string {
  switch (unit) {
    case 'g':
      return massText(quantity, units.massUnit);
    case 'mm':
      return lengthText(quantity, units.lengthUnit);
    case 'pieces':
      return `${plainDecimals(quantity).replace('-', '\u2212')} ${quantity === 1 ? 'piece' : 'pieces'}`;
  }
}

/** The same as it is typed in a field of this unit. */
export function stockInput(quantity: number, unit: StockUnit, units: UnitChoice): string {
  switch (unit) {
    case 'g':
      return massInput(quantity, units.massUnit);
    case 'mm':
      return lengthInput(quantity, units.lengthUnit);
    case 'pieces':
      return plainDecimals(quantity);
  }
}
