/**
 * A length of time between two moments of a plan, in whole minutes: fixed, or looked up by the moment it is counted
 * from, because a cure takes longer in a cold night.
 */
export type Lag =
  | { readonly kind: 'fixed'; readonly minutes: number }
  | { readonly kind: 'table'; readonly tableId: string };

/**
 * How long something takes by when it begins: entry `i` holds for a beginning at `startMinute + i * stepMinutes`.
 * null: not reached before the temperature course ends. The end, beginning plus length, must never come earlier for
 * a later beginning; `lagTableFault` says where it does.
 */
export interface LagTable {
  readonly id: string;
  readonly startMinute: number;
  /** At least 1. */
  readonly stepMinutes: number;
  readonly minutes: readonly (number | null)[];
}

/** The lag of no time. */
export const NO_LAG: Lag = { kind: 'fixed', minutes: 0 };

/**
 * The minute at which something that begins at `fromMinute` is sure to be over: between two entries the later one's
 * end holds, since ends never fall. null: not within the table.
 */
export function openingMinute(table: LagTable, fromMinute: number): number | null {
  const index = Math.max(0, Math.ceil((fromMinute - table.startMinute) / table.stepMinutes));
  const minutes = table.minutes[index];
  if (minutes === undefined || minutes === null) return null;
  return table.startMinute + index * table.stepMinutes + minutes;
}

/**
 * The minute until which a window that begins to run at `fromMinute` is sure to be open: between two entries, and
 * after the last one, the earlier one's end holds, but never a minute before the beginning. A beginning before the
 * table is not sure to be open at all. null: nothing closes, since the end is not reached.
 */
export function closingMinute(table: LagTable, fromMinute: number): number | null {
  const steps = Math.floor((fromMinute - table.startMinute) / table.stepMinutes);
  const index = Math.min(steps, table.minutes.length - 1);
  if (index < 0) return fromMinute;
  const minutes = table.minutes[index];
  if (minutes === undefined || minutes === null) return null;
  return Math.max(fromMinute, table.startMinute + index * table.stepMinutes + minutes);
}

/** The first entry whose end comes before that of the entry before it; null where the table is sound. */
export function lagTableFault(table: LagTable): number | null {
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (const [index, minutes] of table.minutes.entries()) {
    if (minutes === null) {
      lastEnd = Number.POSITIVE_INFINITY;
      continue;
    }
    const end = index * table.stepMinutes + minutes;
    if (minutes < 0 || end < lastEnd) return index;
    lastEnd = end;
  }
  return null;
}
