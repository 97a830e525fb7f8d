import { lengthSign } from '@/app/_ui/unit-sign';
import type { StockUnit } from '@/lib/stock/ledger';
import type { UnitChoice } from '@/lib/units/unit-choice';

/** The sign that stands at the end of a field of stock. */
export function stockUnitSign(unit: StockUnit, { lengthUnit, massUnit }: UnitChoice): string {
  switch (unit) {
    case 'g':
      return massUnit;
    case 'mm':
      return lengthSign(lengthUnit);
    case 'pieces':
      return 'pieces';
  }
}
