/** What is there of one thing, and the last day it is good; null: it keeps. Days are YYYY-MM-DD. */
interface KeptMilli {
  readonly leftMilli: number;
  readonly expiresOn: string | null;
}

/** What is ordered and the day it is expected on. */
export interface OrderedMilli {
  readonly milli: number;
  readonly expectedOn: string;
}

/** What a step takes of one thing. */
export interface StepNeed {
  /** Names the step. */
  readonly key: string;
  readonly milli: number;
}

/** Where what a step takes comes from. */
export interface StepSupply {
  readonly key: string;
  readonly neededMilli: number;
  /** What of it is there already. */
  readonly thereMilli: number;
  /** The last of the orders it waits for; null: it waits for none. */
  readonly waitsOn: string | null;
  /** What is neither there nor ordered. */
  readonly shortMilli: number;
}

/**
 * Hands what is there, and then what is ordered by the day it is expected on, to the steps in the order given: first
 * named, first served. What has expired on `today` is not there, and an order that should have come before `today`
 * is not counted on.
 */
export function suppliesOf(
  today: string,
  lots: readonly KeptMilli[],
  orders: readonly OrderedMilli[],
  needs: readonly StepNeed[],
): readonly StepSupply[] {
  let there = lots
    .filter(({ expiresOn }) => expiresOn === null || expiresOn >= today)
    .reduce((sum, { leftMilli }) => sum + Math.max(0, leftMilli), 0);
  const coming = orders
    .filter(({ expectedOn }) => expectedOn >= today)
    .map(({ milli, expectedOn }) => ({ milli, expectedOn }))
    .sort((a, b) => (a.expectedOn < b.expectedOn ? -1 : a.expectedOn > b.expectedOn ? 1 : 0));
  return needs.map(({ key, milli }) => {
    const thereMilli = Math.min(there, milli);
    there -= thereMilli;
    let rest = milli - thereMilli;
    let waitsOn: string | null = null;
    for (const order of coming) {
      if (rest === 0) break;
      const some = Math.min(rest, order.milli);
      if (some === 0) continue;
      order.milli -= some;
      rest -= some;
      waitsOn = order.expectedOn;
    }
    return { key, neededMilli: milli, thereMilli, waitsOn, shortMilli: rest };
  });
}
