import { MPA_PER_PSI } from '@/lib/units/force-and-length';
import { forceText, lengthText, massText, temperatureText, wireDiameterText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { optionalNumberText } from './number-text';
import type { QuantityNeed } from './quantity-text';

/** A length between two ends, mm, typed and told in the shop's unit. */
export function lengthNeed({ lengthUnit }: UnitChoice, least: number, most: number): QuantityNeed {
  const range = `between ${lengthText(least, lengthUnit)} and ${lengthText(most, lengthUnit)}`;
  return { quantity: 'length', bareUnit: lengthUnit === 'inch' ? 'in' : 'mm', least, most, range };
}

/** A diameter between two ends, mm. */
export function diameterNeed({ lengthUnit }: UnitChoice, least: number, most: number): QuantityNeed {
  const range = `between ${wireDiameterText(least, lengthUnit)} and ${wireDiameterText(most, lengthUnit)}`;
  return { quantity: 'length', bareUnit: lengthUnit === 'inch' ? 'in' : 'mm', least, most, range };
}

/** A mass between two ends, g. */
export function massNeed({ massUnit }: UnitChoice, least: number, most: number): QuantityNeed {
  const range = `between ${massText(least, massUnit)} and ${massText(most, massUnit)}`;
  return { quantity: 'mass', bareUnit: massUnit, least, most, range };
}

/** A stress between two ends, MPa, typed as a number of the shop's unit: psi beside pounds, MPa beside newtons. */
export function optionalStressText({ forceUnit }: UnitChoice, leastMpa: number, mostMpa: number) {
  const factor = forceUnit === 'lbf' ? MPA_PER_PSI : 1;
  const least = forceUnit === 'lbf' ? Math.ceil(leastMpa / factor) : leastMpa;
  return optionalNumberText(least, Math.floor(mostMpa / factor)).transform((stress) =>
    stress === null ? null : stress * factor,
  );
}

/** A force between two ends, N. */
export function forceNeed({ forceUnit }: UnitChoice, least: number, most: number): QuantityNeed {
  const range = `between ${forceText(least, forceUnit)} and ${forceText(most, forceUnit)}`;
  return { quantity: 'force', bareUnit: forceUnit, least, most, range };
}

/** A temperature between two ends, degC. */
export function temperatureNeed({ temperatureUnit }: UnitChoice, least: number, most: number): QuantityNeed {
  const range = `between ${temperatureText(least, temperatureUnit)} and ${temperatureText(most, temperatureUnit)}`;
  return { quantity: 'temperature', bareUnit: temperatureUnit, least, most, range };
}
