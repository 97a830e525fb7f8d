import { lengthSign, temperatureSign } from '@/app/_ui/unit-sign';
import { forceIn } from '@/lib/units/convert';
import { MPA_PER_PSI } from '@/lib/units/force-and-length';
import { diameterInput, lengthInput, massInput, plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { FigureUnit } from './strength-figures';

/** What stands at the end of a field for such a figure. */
export function strengthSign(unit: FigureUnit, units: UnitChoice): string {
  switch (unit) {
    case 'stress':
      return units.forceUnit === 'lbf' ? 'psi' : 'MPa';
    case 'diameter':
    case 'length':
      return lengthSign(units.lengthUnit);
    case 'force':
      return units.forceUnit;
    case 'mass':
      return units.massUnit;
    case 'temperature':
      return temperatureSign(units.temperatureUnit);
    case 'percent':
      return '%';
    case 'none':
      return '';
  }
}

/** A figure as it is typed in the shop's unit. */
export function strengthInput(value: number, unit: FigureUnit, units: UnitChoice): string {
  switch (unit) {
    case 'stress':
      return plainDecimals(units.forceUnit === 'lbf' ? value / MPA_PER_PSI : value);
    case 'diameter':
      return diameterInput(value, units.lengthUnit);
    case 'length':
      return lengthInput(value, units.lengthUnit);
    case 'force':
      return plainDecimals(forceIn(units.forceUnit, value));
    case 'mass':
      return massInput(value, units.massUnit);
    case 'temperature':
      return temperatureInput(value, units.temperatureUnit);
    case 'percent':
    case 'none':
      return plainDecimals(value);
  }
}

const QUANTITY_UNIT = {
  stress: 'MPa',
  diameter: 'wire-mm',
  length: 'mm',
  force: 'N',
  mass: 'g',
  temperature: 'degC',
  percent: 'percent',
  none: 'none',
} as const satisfies { readonly [U in FigureUnit]: string };

/** A figure as it is read: "1,190 psi". */
export function shownUnit(unit: FigureUnit): (typeof QUANTITY_UNIT)[FigureUnit] {
  return QUANTITY_UNIT[unit];
}
