import { expect, test } from 'vitest';

/**
 * One published value. `seen`: read in the source named. `from memory`: of the source named, not re-read. `derived`:
 * computed elsewhere from such values.
 */
export interface StrengthCheck {
  readonly status: 'seen' | 'from memory' | 'derived';
  readonly what: string;
  readonly got: number;
  readonly want: number;
  /** Largest difference allowed: half a unit of the last printed digit unless said otherwise. */
  readonly within: number;
}

/** One test a value, named by its status and what it is. */
export function checkAll(checks: readonly StrengthCheck[]): void {
  test.each(checks)('[$status] $what: $want', ({ got, want, within }) => {
    expect(Math.abs(got - want), `got ${got}`).toBeLessThanOrEqual(within * (1 + 1e-9));
  });
}
