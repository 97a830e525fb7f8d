import { derived, type FigureSource, fromMemory, OWN_FIGURE } from '@/lib/materials/figure-source';
import { SPRING_WIRE_SOURCE, springWireTensile, type TensileRange } from '@/lib/materials/spring-wire-tensile';
import type { WireSheet } from '@/lib/materials/wire-sheet';
import { psi } from '@/lib/units/force-and-length';

/** A wire's strength as the formulas use it. */
export interface ResolvedWire {
  readonly diameterMm: number;
  /** Middle of the plausible tensile strength, MPa. */
  readonly tensileMpa: number;
  /** The least that wire of this description is made with, MPa. */
  readonly leastTensileMpa: number;
  /** Stress at which it bends for good, MPa. */
  readonly yieldMpa: number;
  readonly tensileSource: FigureSource;
  readonly yieldSource: FigureSource;
}

export type WireResolution =
  | { readonly ok: true; readonly wire: ResolvedWire }
  | { readonly ok: false; readonly code: WireRefusal };

export type WireRefusal = 'temper-missing' | 'strength-not-known' | 'diameter-outside' | 'unusable-figure';

/** 316 spring wire over 302: 10 to 12 percent under. */
const SPRING_316 = 0.89;
const SPRING_316_SOURCE = fromMemory('ASTM A313 type 316, taken as 0.89 of type 302');
/** Yield over tensile strength of spring temper wire, 206 over 275 ksi. */
const SPRING_YIELD = 0.75;
const SPRING_YIELD_SOURCE = fromMemory('Yield of spring temper wire taken as 0.75 of its tensile strength');
/** Soft lock wire: least by the standard, greatest as it is delivered, ksi; it bends for good from 30 to 35 ksi. */
const SOFT: TensileRange = { leastMpa: psi(75_000), greatestMpa: psi(125_000) };
const SOFT_SOURCE = fromMemory('ASTM A580 condition A, 75 ksi at least; lock wire is delivered up to about 125 ksi');
const SOFT_YIELD_MPA = psi(35_000);
const SOFT_YIELD_SOURCE = fromMemory('Soft 302/304 wire yields from 30 to 35 ksi');
/** Yield over tensile strength where only the tensile strength is stated and nothing says how hard the wire is drawn. */
const CAUTIOUS_YIELD = 0.5;

/**
 * Strength of a wire of `diameterMm` as its sheet describes it. Diameter and temper are required: "stainless wire"
 * alone may be anything between 75 and 300 ksi.
 *
 * Refuses a sheet without temper, a diameter outside the standard's rows, and an alloy or temper of which neither a
 * table nor the sheet tells the strength.
 */
export function resolveWire(sheet: WireSheet, diameterMm: number): WireResolution {
  if (sheet.temper === null) return { ok: false, code: 'temper-missing' };
  const stated = [sheet.tensileMpa, sheet.yieldMpa].filter((figure) => figure !== undefined);
  if (![diameterMm, ...stated].every((figure) => figure > 0 && Number.isFinite(figure))) {
    return { ok: false, code: 'unusable-figure' };
  }
  const isStainless = sheet.alloy === 'stainless-302-304' || sheet.alloy === 'stainless-316';
  const { tensileMpa } = sheet;
  if (tensileMpa !== undefined) {
    return resolved(
      sheet,
      diameterMm,
      { leastMpa: tensileMpa, greatestMpa: tensileMpa },
      sheet.sources.tensileMpa ?? OWN_FIGURE,
    );
  }
  if (isStainless && sheet.temper === 'soft') return resolved(sheet, diameterMm, SOFT, SOFT_SOURCE);
  if (isStainless && sheet.temper === 'spring') {
    const range = springWireTensile(diameterMm);
    if (range === null) return { ok: false, code: 'diameter-outside' };
    if (sheet.alloy === 'stainless-302-304') return resolved(sheet, diameterMm, range, SPRING_WIRE_SOURCE);
    const scaled = { leastMpa: range.leastMpa * SPRING_316, greatestMpa: range.greatestMpa * SPRING_316 };
    return resolved(sheet, diameterMm, scaled, SPRING_316_SOURCE);
  }
  return { ok: false, code: 'strength-not-known' };
}

function resolved(sheet: WireSheet, diameterMm: number, range: TensileRange, source: FigureSource): WireResolution {
  const least = range.leastMpa;
  const [yieldMpa, yieldSource] = yieldOf(sheet, least);
  return {
    ok: true,
    wire: {
      diameterMm,
      tensileMpa: 0.5 * (least + range.greatestMpa),
      leastTensileMpa: least,
      yieldMpa,
      tensileSource: source,
      yieldSource,
    },
  };
}

function yieldOf(sheet: WireSheet, leastTensileMpa: number): readonly [number, FigureSource] {
  if (sheet.yieldMpa !== undefined)
    return [Math.min(sheet.yieldMpa, leastTensileMpa), sheet.sources.yieldMpa ?? OWN_FIGURE];
  if (sheet.temper === 'spring') return [SPRING_YIELD * leastTensileMpa, SPRING_YIELD_SOURCE];
  const isTabulatedSoft = sheet.temper === 'soft' && sheet.tensileMpa === undefined;
  if (isTabulatedSoft) return [SOFT_YIELD_MPA, SOFT_YIELD_SOURCE];
  return [CAUTIOUS_YIELD * leastTensileMpa, derived('Yield taken as half the stated tensile strength, to be cautious')];
}
