import type { AnchorDesign } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import type { CurvePoint } from '@/lib/strength/depth-plot';
import type { FailureResult, FailureWay } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

/** One way of giving way over the load's angle. */
export interface AngleCurve {
  readonly way: FailureWay;
  readonly role: FailureResult['role'];
  /** Lower values. */
  readonly points: readonly CurvePoint[];
}

/** Everything of the plot of strength against the load's angle. */
export interface AnglePlot {
  /** What the anchor carries: the least of the ultimate ways. */
  readonly median: readonly CurvePoint[];
  readonly lower: readonly CurvePoint[];
  /** Lower value of each way that has one at every angle, and of the first bending. */
  readonly ways: readonly AngleCurve[];
}

const STEP_DEG = 3;

/** Strength of an anchor over the angle between load and shank, 0 straight to 90 square, by each way it can fail. */
export function anglePlot(design: AnchorDesign, settings: StrengthSettings): AnglePlot {
  const median: CurvePoint[] = [];
  const lower: CurvePoint[] = [];
  const ways = new Map<FailureWay, { role: FailureResult['role']; points: CurvePoint[] }>();
  const add = (way: FailureWay, role: FailureResult['role'], point: CurvePoint) => {
    const there = ways.get(way) ?? { role, points: [] };
    ways.set(way, there);
    there.points.push(point);
  };
  for (let at = 0; at <= 90; at += STEP_DEG) {
    const { atAngle, bendsAtAngle, ways: all } = anchorStrength({ ...design, loadAngleDeg: at }, settings);
    if (atAngle.kind === 'estimate') {
      median.push({ at, loadN: atAngle.medianN });
      lower.push({ at, loadN: atAngle.lowerN });
    }
    for (const { way, role, load, result } of all) {
      const isOfAngle = load === 'at-angle' || load === 'any';
      if (isOfAngle && result.kind === 'estimate') add(way, role, { at, loadN: result.lowerN });
    }
    if (bendsAtAngle?.kind === 'estimate') add('first-bending', 'serviceability', { at, loadN: bendsAtAngle.lowerN });
  }
  return { median, lower, ways: [...ways].map(([way, curve]) => ({ way, ...curve })) };
}
