/**
 * Dew point, and whether a surface is far enough above it to be coated.
 *
 * Magnus formula over water with Sonntag's coefficients as WMO-No. 8 (Guide to Instruments and Methods of
 * Observation, annex 4.B) gives them: `es = 6.112 exp(17.62 t / (243.12 + t))` hPa, valid from -45 to 60 degC
 * (from memory; checked against printed tables in the tests). The leading factor cancels.
 */
const MAGNUS_B = 17.62;
const MAGNUS_C = 243.12;
const COLDEST_C = -45;
const HOTTEST_C = 60;

/** Source: ISO 8502-4, the margin commonly asked for between surface and dew point (from memory). */
export const LEAST_DEW_POINT_MARGIN_C = 3;

/**
 * The temperature at which air of `airC` (-45 to 60 degC) and `humidityPct` (above 0 to 100 %) is saturated, degC;
 * never above `airC`. Throws RangeError outside those ranges. Example: 20 degC and 50 %: 9.3 degC.
 */
export function dewPointC(airC: number, humidityPct: number): number {
  if (!(airC >= COLDEST_C && airC <= HOTTEST_C)) {
    throw new RangeError(`dewPointC needs air of ${COLDEST_C} to ${HOTTEST_C} degC, got ${airC}`);
  }
  if (!(humidityPct > 0 && humidityPct <= 100)) {
    throw new RangeError(`dewPointC needs a relative humidity above 0 and up to 100 %, got ${humidityPct}`);
  }
  if (humidityPct === 100) return airC;
  const exponent = Math.log(humidityPct / 100) + (MAGNUS_B * airC) / (MAGNUS_C + airC);
  return (MAGNUS_C * exponent) / (MAGNUS_B - exponent);
}

export type DewPointCheck =
  | { readonly kind: 'ok' | 'too-close'; readonly dewPointC: number; readonly marginC: number }
  /** Something is not known, or cannot be as given: neither a pass nor a refusal. */
  | { readonly kind: 'not-judged'; readonly missing: readonly ('airC' | 'humidityPct' | 'surfaceC')[] };

/**
 * The check before a topcoat: the surface must be at least 3 degC above the dew point (exactly 3 passes).
 * Values that are absent or outside what the formula holds for are listed as missing.
 * Source: ISO 8502-4. Example: air 20 degC at 80 %, surface 18 degC: dew point 16.4 degC, margin 1.6: too close.
 */
export function dewPointCheck(conditions: {
  readonly airC?: number;
  readonly humidityPct?: number;
  readonly surfaceC?: number;
}): DewPointCheck {
  const { airC, humidityPct, surfaceC } = conditions;
  const hasAir = airC !== undefined && airC >= COLDEST_C && airC <= HOTTEST_C;
  const hasHumidity = humidityPct !== undefined && humidityPct > 0 && humidityPct <= 100;
  const hasSurface = surfaceC !== undefined && Number.isFinite(surfaceC);
  if (hasAir && hasHumidity && hasSurface) {
    const dewC = dewPointC(airC, humidityPct);
    const marginC = surfaceC - dewC;
    return { kind: marginC >= LEAST_DEW_POINT_MARGIN_C ? 'ok' : 'too-close', dewPointC: dewC, marginC };
  }
  const missing: ('airC' | 'humidityPct' | 'surfaceC')[] = [];
  if (!hasAir) missing.push('airC');
  if (!hasHumidity) missing.push('humidityPct');
  if (!hasSurface) missing.push('surfaceC');
  return { kind: 'not-judged', missing };
}
