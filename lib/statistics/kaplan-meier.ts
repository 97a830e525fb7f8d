/** A load with what it says: it held exactly this, or at least this. */
export interface HeldLoad {
  readonly load: number;
  readonly isLowerBound: boolean;
}

export interface SurvivalStep {
  readonly load: number;
  /** Estimated share that holds more than this load. */
  readonly share: number;
  /** Greenwood's standard error of the share; null at the last step of a sample without lower bounds. */
  readonly standardError: number | null;
}

/**
 * The share that holds more than each load at which one failed, with lower bounds counted as still holding there.
 * For display: 15 readings cannot reach a 5 % point. In order of load.
 * Source: E. L. Kaplan, P. Meier (1958); NIST/SEMATECH e-Handbook 8.2.1.5.
 */
export function kaplanMeier(loads: readonly HeldLoad[]): SurvivalStep[] {
  const failures = [...new Set(loads.filter((held) => !held.isLowerBound).map((held) => held.load))].sort(
    (a, b) => a - b,
  );
  let share = 1;
  let sum = 0;
  return failures.map((load) => {
    const atRisk = loads.filter((held) => held.load >= load).length;
    const failed = loads.filter((held) => !held.isLowerBound && held.load === load).length;
    share *= 1 - failed / atRisk;
    sum += failed === atRisk ? Number.POSITIVE_INFINITY : failed / (atRisk * (atRisk - failed));
    return { load, share, standardError: Number.isFinite(sum) ? share * Math.sqrt(sum) : null };
  });
}
