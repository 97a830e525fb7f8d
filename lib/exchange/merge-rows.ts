import type { ReadingColumns, RowColumns } from './reading-columns';

/** Rows in order of time, rows of the same instant averaged. */
export interface MergedRows {
  readonly readings: ReadingColumns;
  /** Rows that were averaged into another one of the same instant. */
  readonly duplicateRows: number;
  /** Rows that stood before an earlier one (in a log that runs backwards: a later one) in the file. */
  readonly outOfOrderRows: number;
  /** Whether the file runs from the newest reading to the oldest. */
  readonly isBackwards: boolean;
}

/** The sensor's value when it has not measured yet, degC, and how far its neighbours must be off. From memory. */
const POWER_UP_C = 85;
const POWER_UP_APART_C = 20;

/**
 * Puts the rows of a file in order of time and averages those of one instant (temperature and humidity by themselves).
 * Rows whose instant is NaN are left out. `at`: the instants to use, one a row.
 * Source: rule 8 of section 7 of the reference pack.
 */
export function mergeRows(rows: RowColumns, at: Float64Array): MergedRows {
  let missing = 0;
  for (const instant of at) if (Number.isNaN(instant)) missing += 1;
  const direction = directionOf(at);
  let outOfOrderRows = 0;
  let extreme = Number.NaN;
  for (const instant of at) {
    if ((instant - extreme) * direction < 0) outOfOrderRows += 1;
    else if (!Number.isNaN(instant)) extreme = instant;
  }
  const order = outOfOrderRows === 0 && missing === 0 ? null : sortedPlaces(at, missing);
  const readings = averaged(rows, at, order, direction === -1);
  return {
    readings,
    duplicateRows: at.length - missing - readings.at.length,
    outOfOrderRows,
    isBackwards: direction === -1,
  };
}

/** 1 when most steps go forward in time, else -1. */
export function directionOf(at: Float64Array): 1 | -1 {
  let forward = 0;
  let last = Number.NaN;
  for (const instant of at) {
    if (instant > last) forward += 1;
    else if (instant < last) forward -= 1;
    if (!Number.isNaN(instant)) last = instant;
  }
  return forward < 0 ? -1 : 1;
}

/** Places of the rows in order of time, those without an instant left out. */
function sortedPlaces(at: Float64Array, missing: number): Uint32Array {
  const places = new Uint32Array(at.length - missing);
  let count = 0;
  for (let row = 0; row < at.length; row += 1) {
    if (!Number.isNaN(at[row] ?? Number.NaN)) {
      places[count] = row;
      count += 1;
    }
  }
  return places.sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0));
}

function averaged(rows: RowColumns, at: Float64Array, order: Uint32Array | null, isBackwards: boolean): ReadingColumns {
  const count = order?.length ?? at.length;
  const rowC = rows.temperatureC;
  const rowPct = rows.humidityPct;
  const readAt = new Float64Array(count);
  const temperatureC = new Float64Array(count);
  const humidityPct = rowPct === null ? null : new Float64Array(count);
  let written = -1;
  let alike = 0;
  let sumC = 0;
  let humidities = 0;
  let sumPct = 0;
  for (let index = 0; index < count; index += 1) {
    const row = order === null ? (isBackwards ? count - 1 - index : index) : (order[index] ?? 0);
    const instant = at[row] ?? 0;
    if (written === -1 || readAt[written] !== instant) {
      written += 1;
      readAt[written] = instant;
      alike = humidities = sumC = sumPct = 0;
      if (humidityPct !== null) humidityPct[written] = Number.NaN;
    }
    alike += 1;
    sumC += rowC[row] ?? 0;
    temperatureC[written] = sumC / alike;
    const humidity = rowPct?.[row] ?? Number.NaN;
    if (humidityPct === null || Number.isNaN(humidity)) continue;
    humidities += 1;
    sumPct += humidity;
    humidityPct[written] = sumPct / humidities;
  }
  return {
    at: readAt.slice(0, written + 1),
    temperatureC: temperatureC.slice(0, written + 1),
    humidityPct: humidityPct?.slice(0, written + 1) ?? null,
  };
}

/** Places of rows that read exactly 85 degC while the rows beside them are far from it, in file order. */
export function powerUpRows(temperatureC: Float64Array): number[] {
  const found: number[] = [];
  for (let row = 0; row < temperatureC.length; row += 1) {
    if (temperatureC[row] !== POWER_UP_C) continue;
    const near = [temperatureC[row - 1], temperatureC[row + 1]].filter((value) => value !== undefined);
    if (
      near.length > 0 &&
      near.every((value) => value === POWER_UP_C || Math.abs(value - POWER_UP_C) > POWER_UP_APART_C)
    ) {
      if (near.some((value) => value !== POWER_UP_C)) found.push(row);
    }
  }
  return found;
}
