import 'server-only';
import { pullDesign, type Specimen } from '@/lib/pulltest/pull-design';
import { type PullMaterials, pullMaterials } from '@/lib/pulltest/pull-materials';
import { designOfPlan, layoutOfPlan } from '@/lib/pulltest/pull-plan';
import type { PullSeries } from '@/prisma/data/pull-series';
import { sha256 } from './digest';

/** Chosen: an eye and what a jig grips, a twist of a turn in four diameters, half the glue left in the cup. */
const OUTSIDE_MM = 60;
const TWIST_SHARE = 0.05;
const WASTE_SHARE = 0.5;
/** The least that common kitchen scales mix to the ratio. Chosen. */
const LEAST_MIX_G = 5;
/** Of an epoxy whose sheet gives none. From memory. */
const USUAL_DENSITY = 1.1;

/** The specimens as they are stored, in the form that the design has them. */
export function specimensOf({ specimens, mixes }: Pick<PullSeries, 'specimens' | 'mixes'>): Specimen[] {
  const names = new Map(mixes.map(({ id, name }) => [id, name]));
  return specimens.map(({ code, mixId, depthMm, condition, pullOrder }) => {
    return { id: code, mix: names.get(mixId) ?? '', depthMm, condition, pullOrder };
  });
}

/** Where the planned specimens stand; null for pieces of a batch, or without a board. Others were added by a file. */
export function plannedLayout({ plan, kind }: PullSeries) {
  const design = kind === 'design' ? pullDesign(designOfPlan(plan), sha256) : null;
  return design?.ok ? layoutOfPlan(plan, design.specimens, sha256) : null;
}

/** What making the series takes. */
export function kitOf(series: PullSeries): PullMaterials {
  const { wireDiameterMm = 1, bitDiameterMm = 2.4 } = series.plan.conditions[0] ?? {};
  const sheet = series.mixes[0]?.sheet ?? null;
  const densities = [sheet?.densityA, sheet?.densityB].filter((value) => value !== undefined);
  const glueDensityGPerMl =
    densities.length === 0 ? USUAL_DENSITY : densities.reduce((sum, value) => sum + value, 0) / densities.length;
  return pullMaterials(specimensOf(series), {
    wireDiameterMm,
    bitDiameterMm,
    outsideMm: OUTSIDE_MM,
    twistShare: TWIST_SHARE,
    glueDensityGPerMl,
    wasteShare: WASTE_SHARE,
    leastMixG: LEAST_MIX_G,
  });
}
