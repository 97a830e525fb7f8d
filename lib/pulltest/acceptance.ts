import { censoredRegression } from '@/lib/statistics/censored-regression';
import { fUpperTail } from '@/lib/statistics/f-distribution';
import { type Certainty, leverageFactor } from '@/lib/statistics/interpolated-factor';
import { LEAST_SCATTER } from '@/lib/statistics/lower-percentile';
import { successRunShare } from '@/lib/statistics/order-statements';
import { centre, sumOfSquares } from '@/lib/statistics/summary';

/** One pull of a piece or coupon of a batch, straight and cured. */
export interface AcceptancePull {
  readonly mixId: string;
  /** N; 0: it fell out. */
  readonly loadN: number;
  /** It held at least this. */
  readonly isLowerBound: boolean;
}

/** Scatter within a mix as a calibration knows it, of logarithms. */
export interface KnownScatter {
  readonly logSd: number;
  readonly freedom: number;
}

export interface AcceptanceInput {
  readonly pulls: readonly AcceptancePull[];
  /** Every mix that joints of the batch were set with, tested or not. */
  readonly mixIds: readonly string[];
  readonly demandN: number;
  readonly certainty: Certainty;
  readonly known: KnownScatter | null;
}

/** Why a mix is held. */
export type HoldReason =
  | 'not-tested'
  | 'fell-out'
  | 'below-demand'
  | 'lower-value-short'
  | 'no-scatter-known'
  | 'bounds-only'
  | 'not-determined';

export type MixVerdict =
  | {
      readonly verdict: 'accept';
      readonly mixId: string;
      readonly pulls: number;
      /** With the certainty asked for, the share of its joints that shall hold more than this, N. */
      readonly lowerN: number;
    }
  | {
      readonly verdict: 'hold';
      readonly mixId: string;
      readonly pulls: number;
      readonly reason: HoldReason;
      /** Null where none can be stated. */
      readonly lowerN: number | null;
      /** Of joints that only were proof-loaded: the share that holds the least of those loads, with the confidence. */
      readonly proofShare: number | null;
    };

export interface Acceptance {
  /** Accepted only where every mix is. */
  readonly isAccepted: boolean;
  readonly mixes: readonly MixVerdict[];
  /** Scatter within mixes that was used, of logarithms; null where none could be had. */
  readonly scatter: { readonly logSd: number; readonly freedom: number; readonly usesKnown: boolean } | null;
}

/**
 * Accepts or holds each mix of a batch on the lower tolerance bound of its own pulls against a demand. The question is
 * about joints of these very mixes, so that mixes are not averaged: a good mix cannot carry a bad one. Scatter is
 * pooled over the mixes, and with a known one unless this batch scatters clearly more.
 *
 * Throws RangeError unless the demand is positive and loads are 0 or more. A pull of a mix that is not listed counts
 * as one of a mix of its own.
 * Source: k = sqrt(h) t'(confidence; freedom, z / sqrt(h)), h = 1 / pulls (pooled scatter, exact).
 */
export function acceptance(input: AcceptanceInput): Acceptance {
  const { pulls, demandN } = input;
  if (!(demandN > 0)) throw new RangeError(`acceptance needs a positive demand, got ${demandN}`);
  if (!pulls.every(({ loadN }) => loadN >= 0 && Number.isFinite(loadN))) {
    throw new RangeError('acceptance needs loads of 0 or more');
  }
  const mixIds = [...new Set([...input.mixIds, ...pulls.map(({ mixId }) => mixId)])];
  const middle = middleOfMixes(pulls);
  const scatter = middle === null ? null : withKnown(middle.own, input.known);
  const mixes = mixIds.map((mixId) => verdictOf(mixId, input, middle?.heights.get(mixId) ?? null, scatter));
  return { isAccepted: mixes.length > 0 && mixes.every(({ verdict }) => verdict === 'accept'), mixes, scatter };
}

function verdictOf(
  mixId: string,
  { pulls, demandN, certainty }: AcceptanceInput,
  height: number | null,
  scatter: Acceptance['scatter'],
): MixVerdict {
  const own = pulls.filter((pull) => pull.mixId === mixId);
  const hold = (reason: HoldReason, lowerN: number | null = null, proofShare: number | null = null): MixVerdict => {
    return { verdict: 'hold', mixId, pulls: own.length, reason, lowerN, proofShare };
  };
  if (own.length === 0) return hold('not-tested');
  const failed = own.filter(({ isLowerBound }) => !isLowerBound);
  if (failed.some(({ loadN }) => loadN === 0)) return hold('fell-out');
  if (failed.some(({ loadN }) => loadN < demandN)) return hold('below-demand');
  if (failed.length === 0) {
    const share = successRunShare(own.length, certainty.confidence);
    const least = Math.min(...own.map(({ loadN }) => loadN));
    const isEnough = share >= certainty.content && least >= demandN;
    return isEnough ? { verdict: 'accept', mixId, pulls: own.length, lowerN: least } : hold('bounds-only', null, share);
  }
  if (height === null) return hold('not-determined');
  if (scatter === null) return hold('no-scatter-known');
  const k = leverageFactor(1 / own.length, scatter.freedom, certainty);
  const lowerN = Math.exp(height - k * Math.max(scatter.logSd, LEAST_SCATTER));
  if (lowerN < demandN) return hold('lower-value-short', lowerN);
  return { verdict: 'accept', mixId, pulls: own.length, lowerN };
}

interface Middle {
  /** ln load of the middle joint of each mix in which one failed. */
  readonly heights: ReadonlyMap<string, number>;
  /** Scatter within the mixes; null where every mix has a single pull. */
  readonly own: KnownScatter | null;
}

/** Null where the pulls with bounds among them do not determine the middle of every mix. */
function middleOfMixes(pulls: readonly AcceptancePull[]): Middle | null {
  const usable = pulls.filter(({ loadN }) => loadN > 0);
  const judged = [...new Set(usable.filter(({ isLowerBound }) => !isLowerBound).map(({ mixId }) => mixId))];
  const used = usable.filter(({ mixId }) => judged.includes(mixId));
  const freedom = used.length - judged.length;
  if (!used.some(({ isLowerBound }) => isLowerBound)) {
    const groups = judged.map((mixId) =>
      used.filter((pull) => pull.mixId === mixId).map(({ loadN }) => Math.log(loadN)),
    );
    const squares = groups.reduce((sum, group) => sum + sumOfSquares(group), 0);
    const heights = new Map(judged.map((mixId, i) => [mixId, centre(groups[i] ?? [])]));
    return { heights, own: freedom > 0 ? { logSd: Math.sqrt(squares / freedom), freedom } : null };
  }
  const fit = censoredRegression(
    used.map(({ mixId, loadN, isLowerBound }) => ({
      y: Math.log(loadN),
      isLowerBound,
      group: judged.indexOf(mixId),
      covariates: [],
    })),
    'lognormal',
  );
  if (!fit.ok) return null;
  const exact = used.filter(({ isLowerBound }) => !isLowerBound).length;
  return {
    heights: new Map(judged.map((mixId, i) => [mixId, fit.groups[i] ?? 0])),
    // Only joints that failed are counted as knowledge of the scatter: the safe side.
    own: { logSd: fit.scale * Math.sqrt(used.length / freedom), freedom: exact - judged.length },
  };
}

/** Own and known scatter pooled, unless this batch scatters more than the known one can explain. */
function withKnown(own: KnownScatter | null, known: KnownScatter | null): Acceptance['scatter'] {
  if (known === null || !(known.freedom >= 1 && known.logSd > 0))
    return own === null ? null : { ...own, usesKnown: false };
  if (own === null) return { ...known, usesKnown: true };
  const ratio = (own.logSd / known.logSd) ** 2;
  if (fUpperTail(ratio, own.freedom, known.freedom) < 0.05) return { ...own, usesKnown: false };
  const freedom = own.freedom + known.freedom;
  const squares = own.freedom * own.logSd ** 2 + known.freedom * known.logSd ** 2;
  return { logSd: Math.sqrt(squares / freedom), freedom, usesKnown: true };
}

/**
 * How many pulls of each mix it takes for joints of a middle strength `ratio` times the demand to be accepted in the
 * middle of cases; null: more than 50. The scatter is expected, with the degrees of freedom it is known with.
 */
export function pullsToAccept(ratio: number, known: KnownScatter, mixes: number, certainty: Certainty): number | null {
  if (!(ratio > 1 && known.logSd > 0 && mixes >= 1)) return null;
  const scatter = Math.max(known.logSd, LEAST_SCATTER);
  for (let pulls = 1; pulls <= 50; pulls++) {
    const freedom = known.freedom + mixes * (pulls - 1);
    if (freedom >= 1 && Math.log(ratio) >= leverageFactor(1 / pulls, freedom, certainty) * scatter) return pulls;
  }
  return null;
}
