import { twistedPair } from '@/lib/geometry/twisted-pair';

/** A shank in its hole, as far as the glue round it goes. */
export interface GluedShank {
  readonly holeDiameterMm: number;
  /** Depth of shank in glue. */
  readonly embedmentMm: number;
  readonly wireDiameterMm: number;
  /** Length of one full turn of two strands twisted together; null: one straight strand. */
  readonly pitchMm: number | null;
}

export type GlueNeed =
  /** `isTight`: less than 0.2 mm between the shank's envelope and the hole, where glue hardly gets past it. */
  | { readonly ok: true; readonly netMm3: number; readonly isTight: boolean }
  /** The shank does not go into the hole; `leastMm` would take it. */
  | { readonly ok: false; readonly code: 'hole-too-narrow'; readonly leastMm: number };

/** Room a shank needs to go in with glue round it. Common practice, no source: 0.2 to 0.4 mm. */
const CLEARANCE_MM = 0.2;

/**
 * Volume of glue that fills a hole round its shank: hole less wire, mm^3.
 *
 * Throws RangeError unless the sizes are positive.
 * Source: cylinders and helices (derived). A 2.5 mm hole 25 mm deep round two strands of 0.9 mm, 6 mm a turn: 87.555 mm^3.
 */
export function glueRoundShank({ holeDiameterMm, embedmentMm, wireDiameterMm, pitchMm }: GluedShank): GlueNeed {
  for (const size of [holeDiameterMm, embedmentMm, wireDiameterMm]) {
    if (!(size > 0 && Number.isFinite(size))) throw new RangeError(`glueRoundShank needs positive sizes, got ${size}`);
  }
  const pair = pitchMm === null ? null : twistedPair(wireDiameterMm, pitchMm);
  const envelopeMm = pair?.envelopeMm ?? wireDiameterMm;
  if (holeDiameterMm < envelopeMm) {
    return { ok: false, code: 'hole-too-narrow', leastMm: envelopeMm + CLEARANCE_MM };
  }
  const hole = 0.25 * Math.PI * holeDiameterMm ** 2 * embedmentMm;
  const strand = 0.25 * Math.PI * wireDiameterMm ** 2 * embedmentMm;
  const wire = pair === null ? strand : 2 * strand * pair.takeUp;
  return {
    ok: true,
    netMm3: Math.max(0, hole - wire),
    isTight: holeDiameterMm < envelopeMm + CLEARANCE_MM - 1e-9,
  };
}

/**
 * Mass of mixed glue for a volume, g. `waste` 1 and more: what is squeezed out, wiped off and soaked in.
 * Throws RangeError for a density that is not positive or a waste below 1.
 */
export function glueMassG(netMm3: number, densityGPerMl: number, waste: number): number {
  if (!(densityGPerMl > 0 && waste >= 1)) {
    throw new RangeError(`glueMassG needs a positive density and a waste of 1 or more, got ${densityGPerMl}, ${waste}`);
  }
  return (densityGPerMl * netMm3 * waste) / 1000;
}

/**
 * Volume of one coat over a surface, mm^3, before any waste: the film as it dries, more where part of it evaporates.
 * `solids` is the share by volume that stays, 1 for a coat without solvent.
 *
 * Throws RangeError unless surface, film and solids are positive and solids at most 1.
 */
export function coatVolumeMm3(surfaceMm2: number, filmMm: number, solids = 1): number {
  if (!(surfaceMm2 > 0 && filmMm > 0 && solids > 0 && solids <= 1)) {
    throw new RangeError(`coatVolumeMm3 needs a surface, a film and solids, got ${surfaceMm2}, ${filmMm}, ${solids}`);
  }
  return (surfaceMm2 * filmMm) / solids;
}
