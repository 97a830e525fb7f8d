import type { CureLanes } from '@/lib/cure/cure-lanes';
import { type CureClock, type Release, release } from '@/lib/cure/release';
import type { Instant } from '@/lib/units/instant';

/** When the next coat may go on without sanding, and what to do once that is over. */
export interface RecoatWindow {
  /** From the latest instant of `recoat-from`; other kinds of release say why there is none. */
  readonly opens: Release;
  /** The earliest instant at which the window may be closed; null when the sheet states no end. */
  readonly closesAt: Instant | null;
  /** The window closes before it is sure to have opened: plan for the remedy, there is no safe time without. */
  readonly closesBeforeOpening: boolean;
  /** What to do when it has closed. */
  readonly remedy: string;
}

/** `closed` holds from `closesAt` on, even if the window was never sure to be open. */
export type RecoatState = 'not-stated' | 'not-judged' | 'not-yet' | 'open' | 'closed';

/** Common practice for amine-cured epoxies, whose blush is washed off with water before it is sanded; no source. */
const COMMON_REMEDY = 'wash, dry, sand';

/**
 * The recoat window of a coat's clock. `lanes` must be those of its sheet.
 * Throws RangeError when the clock began outside the course. Example: 4 to 24 h at 25 degC, 45 to 65 kJ/mol, held
 * at 30 degC: open from 2.97 h to 15.57 h; at 15 degC from 9.94 h to 24 h.
 */
export function recoatWindow(clock: CureClock, lanes: CureLanes): RecoatWindow {
  const opens = release(clock, lanes, 'recoat-from');
  const closes = release(clock, lanes, 'recoat-by');
  const closesAt = closes.kind === 'release' ? closes.earliestAt : null;
  const opensAt = opens.kind === 'release' ? opens.latestAt : null;
  const opensTooLate = opensAt === null ? opens.kind === 'beyond-horizon' : closesAt !== null && closesAt <= opensAt;
  return {
    opens,
    closesAt,
    closesBeforeOpening: closesAt !== null && opensTooLate,
    remedy: clock.sheet.recoatRemedy ?? COMMON_REMEDY,
  };
}

/** What holds at an instant. The closing instant itself already counts as closed, the opening one as open. */
export function recoatStateAt(window: RecoatWindow, at: Instant): RecoatState {
  if (window.closesAt !== null && at >= window.closesAt) return 'closed';
  switch (window.opens.kind) {
    case 'release':
      return at >= window.opens.latestAt ? 'open' : 'not-yet';
    case 'beyond-horizon':
      return 'not-yet';
    case 'not-stated':
    case 'not-judged':
      return window.opens.kind;
  }
}
