import { type JudgedPull, OUT_REASONS, type OutReason } from '@/lib/pulltest/judge-pulls';
import { PULL_MODES, type PullMode } from '@/lib/pulltest/pull-mode';

/** How the pulls of a series ended, and what became of them. */
export interface PullTally {
  readonly pulls: number;
  /** Modes that occurred, in the order of the test card. */
  readonly modes: readonly { readonly mode: PullMode; readonly pulls: number }[];
  readonly exact: number;
  readonly atLeast: number;
  readonly fellOut: number;
  readonly out: readonly { readonly reason: OutReason; readonly pulls: number }[];
  /** Loads at which the wire itself broke, N, rising: where its limit lies. */
  readonly wireBrokeN: readonly number[];
}

/** Counts of modes and of what counts. */
export function pullTally(pulls: readonly JudgedPull[]): PullTally {
  const count = (holds: (pull: JudgedPull) => boolean) => pulls.filter(holds).length;
  return {
    pulls: pulls.length,
    modes: PULL_MODES.map((mode) => ({ mode, pulls: count(({ record }) => record.mode === mode) })).filter(
      (row) => row.pulls > 0,
    ),
    exact: count(({ use }) => use.kind === 'exact'),
    atLeast: count(({ use }) => use.kind === 'at-least'),
    fellOut: count(({ use }) => use.kind === 'fell-out'),
    out: OUT_REASONS.map((reason) => ({
      reason,
      pulls: count(({ use }) => use.kind === 'out' && use.reason === reason),
    })).filter((row) => row.pulls > 0),
    wireBrokeN: pulls
      .flatMap(({ record, use }) => (record.mode === 'wire-broke' && use.kind === 'at-least' ? [use.loadN] : []))
      .sort((a, b) => a - b),
  };
}
