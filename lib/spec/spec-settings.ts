import { DEFAULT_DEMAND_SETTINGS, type DemandSettings } from '@/lib/strength/demand';
import { USUAL_FACTOR } from '@/lib/strength/factor-of-safety';
import { DEFAULT_STRENGTH_SETTINGS, type StrengthSettings } from '@/lib/strength/strength-settings';
import { inches } from '@/lib/units/force-and-length';

/** The rules' figures as the shop set them. */
export interface SpecSettings {
  readonly strength: StrengthSettings;
  readonly demand: DemandSettings;
  /** Lower value of an anchor over the greatest load of its line. */
  readonly requiredFactor: number;
  readonly leastEmbedmentMm: number;
  /** Depths are offered in whole multiples of this. */
  readonly incrementMm: number;
  /** Hole under the end of the shank that is let pass. */
  readonly drillSlackMm: number;
  /** Wood to be left under a hole. */
  readonly woodBelowMm: number;
  /** Woods below this specific gravity (12 %) hold no glued anchor. */
  readonly throughWireBelowGravity: number;
  /** Warmest a lure is kept, degC. */
  readonly serviceTemperatureC: number;
  readonly calibrationMaxAgeDays: number;
}

/**
 * Half an inch is common practice, no source; 0.20 and the rest are chosen: an eighth of an inch of wood under a hole,
 * a sixteenth of slack under a shank, 30 degC, a year between calibrations.
 */
export const DEFAULT_SPEC_SETTINGS: SpecSettings = {
  strength: DEFAULT_STRENGTH_SETTINGS,
  demand: DEFAULT_DEMAND_SETTINGS,
  requiredFactor: USUAL_FACTOR,
  leastEmbedmentMm: inches(1 / 2),
  incrementMm: inches(1 / 16),
  drillSlackMm: inches(1 / 16),
  woodBelowMm: inches(1 / 8),
  throughWireBelowGravity: 0.2,
  serviceTemperatureC: 30,
  calibrationMaxAgeDays: 365,
};
