import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { type Comparison, gluedComparisons } from '@/lib/strength/comparisons';
import type { NoEstimateReason } from '@/lib/strength/estimate';
import type { AnchorStrength, FailureWay } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { gluedShankOf } from '@/lib/strength/twisted-wire-strength';
import { GLUED_WIRE_BOX } from '@/lib/strength/validity-box';
import { inches } from '@/lib/units/force-and-length';

/** A point of a curve: depth or angle, and load in N. */
export interface CurvePoint {
  readonly at: number;
  readonly loadN: number;
}

/** A curve in pieces: broken where there is no estimate. */
export type BrokenCurve = readonly (readonly CurvePoint[])[];

/** Depths over which nothing is said, and why. */
export interface SilentStretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly reasons: readonly NoEstimateReason[];
}

/** Someone else's formula over depth. */
export interface PublishedCurve extends Omit<Comparison, 'loadN'> {
  readonly points: readonly CurvePoint[];
}

/** Everything of the plot of strength against depth. */
export interface DepthPlot {
  readonly deepestMm: number;
  /** Pulled straight: half of all such anchors carry more; all but the lower share carry more. */
  readonly median: BrokenCurve;
  readonly lower: BrokenCurve;
  /** The lower value at the design's load angle; empty where that is 0. */
  readonly lowerAtAngle: BrokenCurve;
  /** What wire or eye allow however deep, lower value; null: not known. */
  readonly wireLimitN: number | null;
  readonly silent: readonly SilentStretch[];
  readonly published: readonly PublishedCurve[];
}

/** Spacing of the depths, half the usual step; and of those of the published curves, which are smooth. */
const STEP_MM = inches(1 / 32);
const PUBLISHED_STEP_MM = inches(1 / 8);
/** A little beyond the deepest estimate, so that its end is seen. */
const DEEPEST_MM = inches(1 + 5 / 8);
/** Where two depths are shown on either side of a limit. */
const HAIR_MM = 1e-6;

/**
 * Strength of a glued shank over its depth. `design.cover` must reach as deep as the plot or to where the shank leaves
 * the body; its own embedment is not read, only its void.
 */
export function depthPlot(design: TwistedWireAnchor, settings: StrengthSettings): DepthPlot {
  const results = depths(design).map((embedmentMm) => ({
    at: embedmentMm,
    strength: anchorStrength({ ...design, embedmentMm }, settings),
  }));
  const curve = (pick: (strength: AnchorStrength) => number | null) => broken(results, pick);
  return {
    deepestMm: DEEPEST_MM,
    median: curve(({ straight }) => (straight.kind === 'estimate' ? straight.medianN : null)),
    lower: curve(({ straight }) => (straight.kind === 'estimate' ? straight.lowerN : null)),
    lowerAtAngle:
      design.loadAngleDeg === 0 ? [] : curve(({ atAngle }) => (atAngle.kind === 'estimate' ? atAngle.lowerN : null)),
    wireLimitN: wireLimit(results[0]?.strength ?? null),
    silent: silentStretches(results),
    published: published(design, settings),
  };
}

/** Every 32nd of an inch, and both sides of each depth at which the estimate begins or ends. */
function depths({ cover }: TwistedWireAnchor): readonly number[] {
  const { low, high } = GLUED_WIRE_BOX.embedmentMm;
  const through = cover === null ? [] : [cover.throughMm - HAIR_MM, cover.throughMm + HAIR_MM];
  const limits = [low, low * (1 - 2e-6), high, high * (1 + 2e-6), ...through];
  const even = Array.from({ length: Math.round(DEEPEST_MM / STEP_MM) }, (_, k) => (k + 1) * STEP_MM);
  return [...even, ...limits.filter((mm) => mm > 0 && mm < DEEPEST_MM)].sort((a, b) => a - b);
}

interface AtDepth {
  readonly at: number;
  readonly strength: AnchorStrength;
}

/** A curve through the values there are, broken where one is missing. */
function broken(results: readonly AtDepth[], pick: (strength: AnchorStrength) => number | null): BrokenCurve {
  const pieces: CurvePoint[][] = [];
  let open = false;
  for (const { at, strength } of results) {
    const loadN = pick(strength);
    if (loadN === null) {
      open = false;
      continue;
    }
    if (!open) pieces.push([]);
    open = true;
    pieces.at(-1)?.push({ at, loadN });
  }
  return pieces;
}

function silentStretches(results: readonly AtDepth[]): readonly SilentStretch[] {
  const stretches: SilentStretch[] = [];
  let from = 0;
  let before: string | null = null;
  for (const { at, strength } of results) {
    const reasons = strength.straight.kind === 'no-estimate' ? strength.straight.reasons : [];
    const key = reasons.join();
    const last = stretches.at(-1);
    if (reasons.length > 0) {
      if (key === before && last !== undefined) stretches[stretches.length - 1] = { ...last, toMm: at };
      else stretches.push({ fromMm: from, toMm: at, reasons });
    }
    before = key;
    from = at;
  }
  return stretches;
}

const WIRE_WAYS: readonly FailureWay[] = ['wire-in-eye', 'eye-opens'];

function wireLimit(strength: AnchorStrength | null): number | null {
  const found = strength?.ways.find(({ way, role }) => role === 'ultimate' && WIRE_WAYS.includes(way))?.result;
  return found?.kind === 'estimate' ? found.lowerN : null;
}

function published(design: TwistedWireAnchor, settings: StrengthSettings): readonly PublishedCurve[] {
  const count = Math.round(DEEPEST_MM / PUBLISHED_STEP_MM);
  const byDepth = Array.from({ length: count }, (_, k) => {
    const at = (k + 1) * PUBLISHED_STEP_MM;
    return { at, all: gluedComparisons(gluedShankOf({ ...design, embedmentMm: at }), settings.lower) };
  });
  const first = byDepth[0]?.all ?? [];
  return first.map(({ loadN: _, ...formula }, index) => ({
    ...formula,
    points: byDepth.flatMap(({ at, all }) => {
      const one = all[index];
      return one === undefined ? [] : [{ at, loadN: one.loadN }];
    }),
  }));
}
