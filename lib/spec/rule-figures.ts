import { DEFAULT_SPEC_SETTINGS, type SpecSettings } from '@/lib/spec/spec-settings';
import { lowerShare } from '@/lib/strength/estimate';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

/** What a shop sets about its rules, as plain figures: what is stored and what a form shows. */
export interface RuleFigures {
  /** Lower value of an anchor over the greatest load of its line. */
  readonly requiredFactor: number;
  /** Share of joints that the lower value lets fall below it. */
  readonly lowerShare: number;
  readonly leastEmbedmentMm: number;
  readonly incrementMm: number;
  readonly drillSlackMm: number;
  readonly woodBelowMm: number;
  readonly throughWireBelowGravity: number;
  readonly serviceTemperatureC: number;
  readonly calibrationMaxAgeDays: number;
  readonly surgeFactor: number;
  readonly liftFactor: number;
  /** Depth over which a bond's strength saturates. */
  readonly saturationMm: number;
  readonly endGrainBearing: number;
  readonly combination: StrengthSettings['combination'];
}

/** The figures of a shop that has set none. */
export const DEFAULT_RULE_FIGURES: RuleFigures = ruleFigures(DEFAULT_SPEC_SETTINGS);

/** Settings of the rules as the plain figures they were made of. */
function ruleFigures({ strength, demand, ...rest }: SpecSettings): RuleFigures {
  return {
    requiredFactor: rest.requiredFactor,
    lowerShare: strength.lower.share,
    leastEmbedmentMm: rest.leastEmbedmentMm,
    incrementMm: rest.incrementMm,
    drillSlackMm: rest.drillSlackMm,
    woodBelowMm: rest.woodBelowMm,
    throughWireBelowGravity: rest.throughWireBelowGravity,
    serviceTemperatureC: rest.serviceTemperatureC,
    calibrationMaxAgeDays: rest.calibrationMaxAgeDays,
    surgeFactor: demand.surgeFactor,
    liftFactor: demand.liftFactor,
    saturationMm: strength.saturationMm,
    endGrainBearing: strength.endGrainBearing,
    combination: strength.combination,
  };
}

/** The settings of the rules from what a shop set. Throws RangeError for a lower share outside (0, 0.5). */
export function specSettingsOf(figures: RuleFigures): SpecSettings {
  const { lowerShare: share, saturationMm, endGrainBearing, combination, surgeFactor, liftFactor, ...rest } = figures;
  return {
    ...DEFAULT_SPEC_SETTINGS,
    ...rest,
    strength: {
      ...DEFAULT_SPEC_SETTINGS.strength,
      lower: lowerShare(share),
      saturationMm,
      endGrainBearing,
      combination,
    },
    demand: { ...DEFAULT_SPEC_SETTINGS.demand, surgeFactor, liftFactor },
  };
}
