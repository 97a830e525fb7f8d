import type { FigureSource } from '@/lib/materials/figure-source';
import { fromMemory, published } from '@/lib/materials/figure-source';

export const DOWEL_BEARING_SOURCE: FigureSource = published(
  'Wood Handbook Eq. 8-3, any direction of grain, under 1/4 in',
);

/**
 * Stress at which a thin pin crushes into wood, MPa: 0.42 gives 23.2.
 *
 * Source: 114.5 G^1.84, Wood Handbook Eq. 8-3 (read); NDS 12.3.3 rounds it to 50 psi.
 */
export function dowelBearingMpa(gravity: number): number {
  return 114.5 * gravity ** 1.84;
}

export const CODE_BEARING_SOURCE: FigureSource = fromMemory('EN 1995-1-1 8.5.1, characteristic');

/** Characteristic bearing strength along the grain, MPa, of a predrilled dowel: 12 mm and 350 kg/m3 give 25.256. */
export function codeDowelBearingMpa(densityKgM3: number, diameterMm: number): number {
  return 0.082 * (1 - 0.01 * diameterMm) * densityKgM3;
}
