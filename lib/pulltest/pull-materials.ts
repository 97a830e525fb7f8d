import type { Specimen } from '@/lib/pulltest/pull-design';

/** What one specimen takes. */
export interface SpecimenKit {
  readonly wireDiameterMm: number;
  readonly bitDiameterMm: number;
  /** Wire outside the hole: the eye and what the jig grips, mm. */
  readonly outsideMm: number;
  /** Extra length of a twisted strand over a straight one, as a share; e.g. 0.05. */
  readonly twistShare: number;
  readonly glueDensityGPerMl: number;
  /** Glue that stays in cup and on stick, as a share of what goes into the holes; e.g. 0.5. */
  readonly wasteShare: number;
  /** The least mass worth mixing exactly, g. */
  readonly leastMixG: number;
}

export interface PullMaterials {
  /** All wire, mm, two strands a specimen. */
  readonly wireMm: number;
  readonly holes: readonly { readonly depthMm: number; readonly count: number }[];
  readonly mixes: readonly {
    readonly mix: string;
    readonly joints: number;
    readonly intoHolesMl: number;
    readonly massG: number;
  }[];
}

/**
 * Wire, holes and mixes of a series. Throws RangeError for sizes that are not positive.
 * Glue of a joint: the hole less two strands of wire in it.
 */
export function pullMaterials(specimens: readonly Specimen[], kit: SpecimenKit): PullMaterials {
  const { wireDiameterMm, bitDiameterMm, outsideMm, twistShare, glueDensityGPerMl, wasteShare, leastMixG } = kit;
  if (!(wireDiameterMm > 0 && bitDiameterMm > 0 && glueDensityGPerMl > 0)) {
    throw new RangeError(
      `pullMaterials needs positive sizes, got ${wireDiameterMm}, ${bitDiameterMm}, ${glueDensityGPerMl}`,
    );
  }
  const openMm2 = Math.max(0, (Math.PI / 4) * (bitDiameterMm ** 2 - 2 * wireDiameterMm ** 2));
  const depths = [...new Set(specimens.map(({ depthMm }) => depthMm))].sort((a, b) => a - b);
  const mixes = [...new Set(specimens.map(({ mix }) => mix))];
  return {
    wireMm: specimens.reduce((sum, { depthMm }) => sum + 2 * depthMm * (1 + twistShare) + outsideMm, 0),
    holes: depths.map((depthMm) => ({ depthMm, count: specimens.filter((one) => one.depthMm === depthMm).length })),
    mixes: mixes.sort().map((mix) => {
      const own = specimens.filter((specimen) => specimen.mix === mix);
      const intoHolesMl = own.reduce((sum, { depthMm }) => sum + (openMm2 * depthMm) / 1000, 0);
      const massG = Math.max(leastMixG, intoHolesMl * (1 + wasteShare) * glueDensityGPerMl);
      return { mix, joints: own.length, intoHolesMl, massG };
    }),
  };
}
