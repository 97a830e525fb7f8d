/** Something that is left, and the last day it is good; null: it keeps. Days are YYYY-MM-DD. */
export interface KeptLot {
  readonly leftMilli: number;
  readonly expiresOn: string | null;
}

/** What an open batch still needs of one thing. */
export interface Need {
  readonly batchId: string;
  readonly batchNumber: number;
  /** The day it is needed by; null: nobody has said. */
  readonly neededOn: string | null;
  readonly milli: number;
}

/** The day from which there is not enough of a thing. */
export interface Shortage {
  /** Null: it bites batches without a day only. */
  readonly bitesOn: string | null;
  /** The batch that meets it first, and what that one is short of. */
  readonly first: { readonly batchId: string; readonly batchNumber: number; readonly shortMilli: number };
  /** What all open batches are short of together. */
  readonly shortMilli: number;
  /** What is left when nothing is ordered will have expired before it is needed: how much of it. */
  readonly expiresMilli: number;
}

export interface Outlook {
  readonly leftMilli: number;
  /** What open batches still need. */
  readonly reservedMilli: number;
  readonly shortage: Shortage | null;
}

/**
 * Looks ahead over one thing (a material, or one part of it): batches take in the order of their days, those without a
 * day last, each from the lots that are still good on its day, the one that expires first. A day that is past counts as
 * today. Taking what expires first leaves the most for later, so a shortage found here cannot be avoided by taking in
 * another order.
 */
export function outlook(today: string, lots: readonly KeptLot[], needs: readonly Need[]): Outlook {
  const kept = lots
    .map((lot) => ({ expiresOn: lot.expiresOn ?? NEVER, milli: lot.leftMilli }))
    .sort((a, b) => (a.expiresOn < b.expiresOn ? -1 : a.expiresOn > b.expiresOn ? 1 : 0));
  const ordered = needs
    .map((need) => ({ need, on: dayOf(need, today) }))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.need.batchNumber - b.need.batchNumber));
  let first: { readonly need: Need; readonly on: string; readonly shortMilli: number } | null = null;
  let shortMilli = 0;
  let lastDay = today;
  for (const { need, on } of ordered) {
    if (on !== NEVER) lastDay = on;
    const missing = take(kept, on === NEVER ? lastDay : on, need.milli);
    if (missing === 0) continue;
    first ??= { need, on, shortMilli: missing };
    shortMilli += missing;
  }
  const expiresMilli = kept.filter((lot) => lot.expiresOn < lastDay).reduce((sum, lot) => sum + lot.milli, 0);
  return {
    leftMilli: lots.reduce((sum, lot) => sum + lot.leftMilli, 0),
    reservedMilli: needs.reduce((sum, need) => sum + need.milli, 0),
    shortage:
      first === null
        ? null
        : {
            bitesOn: first.on === NEVER ? null : first.on,
            first: {
              batchId: first.need.batchId,
              batchNumber: first.need.batchNumber,
              shortMilli: first.shortMilli,
            },
            shortMilli,
            expiresMilli,
          },
  };
}

/** After every day that is written. */
const NEVER = '9999-12-31';

function dayOf({ neededOn }: Need, today: string): string {
  if (neededOn === null) return NEVER;
  return neededOn < today ? today : neededOn;
}

/** Takes from the lots that are good on a day, the first to expire first; returns what is missing. */
function take(kept: readonly { readonly expiresOn: string; milli: number }[], on: string, milli: number): number {
  let rest = milli;
  for (const lot of kept) {
    if (rest === 0) break;
    if (lot.expiresOn < on) continue;
    const some = Math.min(rest, lot.milli);
    lot.milli -= some;
    rest -= some;
  }
  return rest;
}
