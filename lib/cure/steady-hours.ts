import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import { laneRate, rateOn } from '@/lib/cure/lane-rate';

/** How long a milestone takes where the temperature never changes, hours. Null: it stays too cold to get there. */
export interface SteadyHours {
  readonly earliest: number;
  readonly central: number | null;
  readonly latest: number | null;
}

/**
 * Hours from setting to a milestone at a temperature that stays the same, for reading a sheet at the shop's usual
 * temperatures; null when the sheet does not give it. `recoat-by` is never stretched past its limit by the clock.
 * Source: equivalent age in the form of ASTM C1074: hours at the reference temperature divided by the rate.
 * Example: 24 h at 25 degC and 55 kJ/mol take 51.83 h at 15 degC.
 */
export function steadyHours(sheet: AdhesiveSheet, milestone: Milestone, temperatureC: number): SteadyHours | null {
  const hours = sheet.milestoneHours[milestone];
  if (hours === undefined) return null;
  const at = (lane: 'slow' | 'central' | 'fast') => {
    const rate = rateOn(laneRate(sheet, lane), temperatureC);
    return rate > 0 ? hours / rate : null;
  };
  const capHours = milestone === 'recoat-by' ? (sheet.recoatCapHours ?? hours) : null;
  const capped = (value: number | null) => (capHours === null ? value : Math.min(value ?? capHours, capHours));
  // On the fast lane nothing stops in the cold, so there is always an earliest time.
  return { earliest: capped(at('fast')) ?? hours, central: capped(at('central')), latest: capped(at('slow')) };
}
