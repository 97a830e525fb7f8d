/** What a coat that is not judged by temperature alone dislikes. */
export type ConditionWarning =
  | { readonly code: 'too-cold'; readonly temperatureC: number; readonly limitC: number }
  | { readonly code: 'too-dry' | 'too-damp'; readonly humidityPct: number; readonly limitPct: number };

/** Chosen, after limits that are commonly printed for finishes. */
const LEAST_C = 10;
const LEAST_HUMIDITY_PCT = 30;
const MOST_HUMIDITY_PCT = 80;

/**
 * Warnings for a material with plain hours (moisture-cured, solvent-borne, light-cured): its hours hold only within
 * limits of temperature (degC) and relative humidity (%). What is not known gives no warning, and no all-clear.
 */
export function conditionWarnings(conditions: {
  readonly temperatureC?: number;
  readonly humidityPct?: number;
}): readonly ConditionWarning[] {
  const { temperatureC, humidityPct } = conditions;
  const warnings: ConditionWarning[] = [];
  if (temperatureC !== undefined && temperatureC < LEAST_C) {
    warnings.push({ code: 'too-cold', temperatureC, limitC: LEAST_C });
  }
  if (humidityPct !== undefined && humidityPct < LEAST_HUMIDITY_PCT) {
    warnings.push({ code: 'too-dry', humidityPct, limitPct: LEAST_HUMIDITY_PCT });
  }
  if (humidityPct !== undefined && humidityPct > MOST_HUMIDITY_PCT) {
    warnings.push({ code: 'too-damp', humidityPct, limitPct: MOST_HUMIDITY_PCT });
  }
  return warnings;
}
