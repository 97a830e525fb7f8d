import type { BodyProfile } from '@/lib/geometry/body-profile';

/** A body as checked: stations strictly rising, wood between the ends. Between stations the halves run straight. */
export interface Body {
  readonly stations: BodyProfile;
  readonly noseMm: number;
  readonly tailMm: number;
}

export type BodyRefusal = 'too-few-stations' | 'not-rising' | 'not-a-size' | 'no-wood-between' | 'length-differs';

export type BodyCheck =
  | { readonly ok: true; readonly body: Body }
  /** `index` is the station at fault. */
  | { readonly ok: false; readonly code: BodyRefusal; readonly index: number };

/** How far the last station may miss the stated length, mm: half a 64th of an inch. */
const LENGTH_TOLERANCE_MM = 0.2;
const GREATEST_MM = 2000;

/**
 * A body from its profile. The ends may be points (both halves 0) or flat faces; every station between them must have
 * wood. `lengthMm`: the stated length that the profile must span, or null.
 */
export function bodyFromProfile(stations: BodyProfile, lengthMm: number | null): BodyCheck {
  const first = stations[0];
  const last = stations.at(-1);
  if (first === undefined || last === undefined || stations.length < 2) {
    return { ok: false, code: 'too-few-stations', index: 0 };
  }
  for (const [index, { xMm, halfHeightMm, halfWidthMm }] of stations.entries()) {
    const isEnd = index === 0 || index === stations.length - 1;
    const halves = [halfHeightMm, halfWidthMm];
    if (!(Math.abs(xMm) <= GREATEST_MM && halves.every((half) => half >= 0 && half <= GREATEST_MM))) {
      return { ok: false, code: 'not-a-size', index };
    }
    if (!isEnd && halves.some((half) => half === 0)) return { ok: false, code: 'no-wood-between', index };
    const before = stations[index - 1];
    if (before !== undefined && !(xMm > before.xMm)) return { ok: false, code: 'not-rising', index };
  }
  if (stations.length === 2 && [first, last].every((end) => end.halfHeightMm * end.halfWidthMm === 0)) {
    return { ok: false, code: 'no-wood-between', index: 0 };
  }
  if (lengthMm !== null && !(Math.abs(last.xMm - first.xMm - lengthMm) <= LENGTH_TOLERANCE_MM)) {
    return { ok: false, code: 'length-differs', index: stations.length - 1 };
  }
  return { ok: true, body: { stations, noseMm: first.xMm, tailMm: last.xMm } };
}

export interface Section {
  readonly halfHeightMm: number;
  readonly halfWidthMm: number;
}

/** The cross-section at x; beyond the ends there is no wood: both halves 0. */
export function sectionAt(body: Body, xMm: number): Section {
  if (xMm < body.noseMm || xMm > body.tailMm) return { halfHeightMm: 0, halfWidthMm: 0 };
  const index = segmentAt(body, xMm);
  const a = body.stations[index];
  const b = body.stations[index + 1];
  if (a === undefined || b === undefined) return { halfHeightMm: 0, halfWidthMm: 0 };
  const share = (xMm - a.xMm) / (b.xMm - a.xMm);
  return {
    halfHeightMm: a.halfHeightMm + share * (b.halfHeightMm - a.halfHeightMm),
    halfWidthMm: a.halfWidthMm + share * (b.halfWidthMm - a.halfWidthMm),
  };
}

/** Index of the station at or before x, so that x lies between it and the next; the ends' segments beyond the ends. */
export function segmentAt(body: Body, xMm: number): number {
  let low = 0;
  let high = body.stations.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((body.stations[middle]?.xMm ?? 0) <= xMm) low = middle;
    else high = middle;
  }
  return low;
}
