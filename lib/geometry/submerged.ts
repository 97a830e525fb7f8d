import type { Body } from '@/lib/geometry/body';
import type { ProfileStation } from '@/lib/geometry/body-profile';
import { ellipseBelow } from '@/lib/geometry/ellipse';
import { GAUSS_POINTS } from '@/lib/geometry/gauss-points';

/** The part of a body under a plane of water, and its centre, in the body's own directions. */
export interface Submerged {
  readonly volumeMm3: number;
  readonly centreXMm: number;
  readonly centreZMm: number;
  /** Area cut by the water, seen along the body's height: the volume gained per mm of water. */
  readonly cutMm2: number;
}

/**
 * The part of a body below the plane z = `heightMm` + `slope` x, which lies square to the middle plane. Relative error
 * of the volume below 1e-5.
 */
export function submergedPart(body: Body, heightMm: number, slope: number): Submerged {
  const sum = { volume: 0, momentX: 0, momentZ: 0, cut: 0 };
  for (let i = 1; i < body.stations.length; i++) {
    const a = body.stations[i - 1];
    const b = body.stations[i];
    if (a === undefined || b === undefined) continue;
    for (const [low, high] of pieces(a, b, heightMm, slope)) {
      const half = 0.5 * (high - low);
      for (const { point, weight } of GAUSS_POINTS) {
        const x = low + half * (1 + point);
        const share = (x - a.xMm) / (b.xMm - a.xMm);
        const h = a.halfHeightMm + share * (b.halfHeightMm - a.halfHeightMm);
        const w = a.halfWidthMm + share * (b.halfWidthMm - a.halfWidthMm);
        const part = ellipseBelow(h, w, heightMm + slope * x);
        sum.volume += half * weight * part.area;
        sum.momentX += half * weight * x * part.area;
        sum.momentZ += half * weight * part.moment;
        sum.cut += half * weight * part.chord;
      }
    }
  }
  const { volume, momentX, momentZ, cut } = sum;
  if (!(volume > 0)) return { volumeMm3: 0, centreXMm: 0, centreZMm: 0, cutMm2: 0 };
  return { volumeMm3: volume, centreXMm: momentX / volume, centreZMm: momentZ / volume, cutMm2: cut };
}

/** The segment cut where the water meets its upper or lower edge: between the cuts everything is smooth. */
function pieces(a: ProfileStation, b: ProfileStation, height: number, slope: number): (readonly [number, number])[] {
  const cuts = [a.xMm, b.xMm];
  for (const side of [-1, 1]) {
    const atA = height + slope * a.xMm - side * a.halfHeightMm;
    const atB = height + slope * b.xMm - side * b.halfHeightMm;
    if (atA * atB < 0) cuts.push(a.xMm + (atA / (atA - atB)) * (b.xMm - a.xMm));
  }
  cuts.sort((p, q) => p - q);
  return cuts.slice(1).map((cut, i) => [cuts[i] ?? cut, cut] as const);
}
