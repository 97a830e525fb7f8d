import type { ProfileStation } from '@/lib/geometry/body-profile';

export const BODY_KINDS = ['lipless', 'popper', 'minnow', 'jerkbait', 'plug'] as const;
export type BodyKind = (typeof BODY_KINDS)[number];

/** Outer measures of a body. */
export interface BodyMeasures {
  readonly lengthMm: number;
  readonly heightMm: number;
  readonly widthMm: number;
}

/** How one kind tapers: where it is thickest, what is left of it at the ends, how full the curves between are. */
interface Taper {
  readonly thickestAt: number;
  readonly noseShare: number;
  readonly noseFullness: number;
  readonly tailShare: number;
  readonly tailFullness: number;
}

/** Chosen: plain starting shapes of our own for a maker to draw from, not copies of any lure. */
const TAPERS: Readonly<Record<BodyKind, Taper>> = {
  lipless: { thickestAt: 0.34, noseShare: 0.18, noseFullness: 2, tailShare: 0.14, tailFullness: 1.6 },
  popper: { thickestAt: 0.12, noseShare: 0.85, noseFullness: 2, tailShare: 0.3, tailFullness: 1.5 },
  minnow: { thickestAt: 0.38, noseShare: 0.2, noseFullness: 2, tailShare: 0.16, tailFullness: 1.5 },
  jerkbait: { thickestAt: 0.42, noseShare: 0.38, noseFullness: 2.4, tailShare: 0.28, tailFullness: 2 },
  plug: { thickestAt: 0.5, noseShare: 0.48, noseFullness: 2.2, tailShare: 0.48, tailFullness: 2.2 },
};

/**
 * A starting profile for a kind of body: stations along it, closer together at the ends, with flat ends. Both halves
 * taper alike, each curve a quarter of a superellipse.
 *
 * Throws RangeError unless all measures are positive and `stationCount` is 5 to 201.
 */
export function bodyShape(kind: BodyKind, measures: BodyMeasures, stationCount = 25): readonly ProfileStation[] {
  const { lengthMm, heightMm, widthMm } = measures;
  if (![lengthMm, heightMm, widthMm].every((size) => size > 0 && Number.isFinite(size))) {
    throw new RangeError(`bodyShape needs positive measures, got ${lengthMm}, ${heightMm}, ${widthMm}`);
  }
  if (!(Number.isInteger(stationCount) && stationCount >= 5 && stationCount <= 201)) {
    throw new RangeError(`bodyShape needs 5 to 201 stations, got ${stationCount}`);
  }
  return Array.from({ length: stationCount }, (_, i) => {
    const along = 0.5 * (1 - Math.cos((Math.PI * i) / (stationCount - 1)));
    const fullness = taper(TAPERS[kind], along);
    return {
      xMm: along * lengthMm,
      halfHeightMm: 0.5 * heightMm * fullness,
      halfWidthMm: 0.5 * widthMm * fullness,
    };
  });
}

function taper(shape: Taper, along: number): number {
  const isNose = along < shape.thickestAt;
  const towardsThickest = isNose ? along / shape.thickestAt : (1 - along) / (1 - shape.thickestAt);
  const end = isNose ? shape.noseShare : shape.tailShare;
  const power = isNose ? shape.noseFullness : shape.tailFullness;
  return end + (1 - end) * (1 - (1 - towardsThickest) ** power) ** (1 / power);
}
