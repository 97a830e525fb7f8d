import type { PullInput } from '@/lib/contracts/pull-forms';
import type { Refusal } from './command-result';

/** What a reading cannot be, whoever writes it and when. */
export function pullFault({
  load,
  mode,
  isLowerBound,
}: Pick<PullInput, 'load' | 'mode' | 'isLowerBound'>): Refusal<'no-load' | 'bound-of-nothing'> | null {
  if (load === null && mode !== 'scale-failed') {
    const message = 'Write the greatest load that the scale showed. If it showed none, choose that the scale failed.';
    return { ok: false, code: 'no-load', message, field: 'load' };
  }
  if (load === 0 && isLowerBound) {
    const message = 'That it held at least nothing says nothing. Write the load, or take the tick away if it fell out.';
    return { ok: false, code: 'bound-of-nothing', message, field: 'isLowerBound' };
  }
  return null;
}
