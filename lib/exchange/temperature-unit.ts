import type { ColumnSample } from './column-sample';
import { headingUnit } from './heading-words';
import type { DecidedBy, LayoutContext, LayoutQuestion, TemperatureUnit } from './reading-layout';

/**
 * From this on a value can hardly be the degC of a workshop, so a file without a unit that holds one is asked about.
 * Chosen, below the 40 of rule 5 of section 7 of the reference pack: 35 to 40 degF is what an unheated shop has in
 * winter, and taken for degC it would call a cold joint cured.
 */
export const PLAUSIBLE_WITHOUT_UNIT_C = 35;

/** Values above this can only be kelvin. Source: rule 5 of section 7 of the reference pack. */
const KELVIN_ABOVE = 200;

export interface UnitFound {
  readonly unit: TemperatureUnit;
  readonly by: DecidedBy;
  readonly question: LayoutQuestion | null;
}

/** Unit of a temperature column: what the maker said, else its heading, else its fields, else the size of its values. */
export function findUnit(column: ColumnSample, context: LayoutContext): UnitFound {
  const { answers } = context;
  if (answers.unit !== undefined) return { unit: answers.unit, by: 'answer', question: null };
  const written = headingUnit(column.heading) ?? column.cells.map(cellUnit).find((unit) => unit !== null);
  if (written !== undefined && written !== null) return { unit: written, by: 'file', question: null };
  const sorted = [...column.numbers].sort((a, b) => a - b);
  const lowest = sorted[0] ?? Number.NaN;
  const highest = sorted.at(-1) ?? Number.NaN;
  if ((sorted[sorted.length >> 1] ?? 0) > KELVIN_ABOVE) return { unit: 'K', by: 'values', question: null };
  const isOpen = highest >= PLAUSIBLE_WITHOUT_UNIT_C || context.temperatureUnit === 'F';
  return isOpen
    ? { unit: 'F', by: 'values', question: { kind: 'unit', lowest, highest } }
    : { unit: 'C', by: 'values', question: null };
}

function cellUnit(cell: string): TemperatureUnit | null {
  const letter = /\d\s*[°º˚]?\s*([CFK])$|\d\s*(℃|℉)$/i.exec(cell);
  switch (letter?.[1]?.toUpperCase() ?? letter?.[2]) {
    case 'C':
    case '℃':
      return 'C';
    case 'F':
    case '℉':
      return 'F';
    case 'K':
      return 'K';
    default:
      return null;
  }
}

const KELVIN_AT_ZERO_C = 273.15;

/**
 * A temperature in degC. degC = (degF - 32) / 1.8 and degC = K - 273.15, exact by definition; what is converted is
 * rounded to a millionth of a degree, so that 69.8 degF is 21 and not 20.999999999999996.
 */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  switch (unit) {
    case 'C':
      return value;
    case 'F':
      return toMillionth((value - 32) / 1.8);
    case 'K':
      return toMillionth(value - KELVIN_AT_ZERO_C);
  }
}

function toMillionth(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
