import { MPA_PER_PSI, NMM_PER_INCH_POUND } from '@/lib/units/force-and-length';
import {
  forceText,
  lengthText,
  massText,
  temperatureText,
  volumeText,
  wireDiameterText,
} from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

/** What a figure is measured in, as it is held inside. `wire-mm` is a length printed as wire and bits are named. */
export const QUANTITY_UNITS = [
  'mm',
  'wire-mm',
  'N',
  'MPa',
  'N*mm',
  'g',
  'mL',
  'kg/m3',
  'degC',
  'deg',
  'percent',
  'days',
  'count',
  'times',
  'none',
] as const;
export type QuantityUnit = (typeof QUANTITY_UNITS)[number];

export interface Quantity {
  readonly value: number;
  readonly unit: QuantityUnit;
}

/** A sentence whose figures are still in SI: the screen prints them in the shop's units. */
export type Words = readonly (string | Quantity)[];

/**
 * One figure in the shop's units, `12.0 lbf`, `8.2 MPa`, `x 1.95`. Throws RangeError for NaN and infinity.
 */
export function quantityText({ value, unit }: Quantity, choice: UnitChoice): string {
  if (!Number.isFinite(value)) throw new RangeError(`quantityText needs a finite number, got ${value}`);
  switch (unit) {
    case 'mm':
      return lengthText(value, choice.lengthUnit);
    case 'wire-mm':
      return wireDiameterText(value, choice.lengthUnit);
    case 'N':
      return forceText(value, choice.forceUnit);
    case 'MPa':
      return choice.forceUnit === 'lbf' ? `${(value / MPA_PER_PSI).toFixed(0)} psi` : `${value.toFixed(1)} MPa`;
    case 'N*mm':
      return choice.forceUnit === 'lbf'
        ? `${(value / NMM_PER_INCH_POUND).toFixed(2)} in-lbf`
        : `${value.toFixed(0)} N mm`;
    case 'g':
      return massText(value, choice.massUnit);
    case 'mL':
      return volumeText(value);
    case 'kg/m3':
      return `${value.toFixed(0)} kg/m³`;
    case 'degC':
      return temperatureText(value, choice.temperatureUnit);
    case 'deg':
      return `${value.toFixed(0)}°`;
    case 'percent':
      return `${value.toFixed(0)} %`;
    case 'days':
      return value === 1 ? '1 day' : `${value.toFixed(0)} days`;
    case 'count':
      return value.toFixed(0);
    case 'times':
      return `× ${value.toFixed(2)}`;
    case 'none':
      return Number(value.toPrecision(3)).toString();
  }
}

/** A sentence in the shop's units. */
export function wordsText(words: Words, choice: UnitChoice): string {
  return words.map((part) => (typeof part === 'string' ? part : quantityText(part, choice))).join('');
}
