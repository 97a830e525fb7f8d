import { nonlinearLeastSquares } from '@/lib/statistics/nonlinear-least-squares';

/** height x tanh(rate x), or height x (1 - exp(-rate x)). */
export type SaturatingForm = 'tanh' | 'exponential';

export interface SaturatingPoints {
  /** Positive. */
  readonly x: readonly number[];
  /** Positive, as many as x. */
  readonly y: readonly number[];
  readonly form: SaturatingForm;
  /** Whether logarithms or the values themselves scatter evenly. */
  readonly scale: 'log' | 'plain';
  /** Positive, one a point; default 1. */
  readonly weights?: readonly number[];
}

export type SaturatingCurve =
  | {
      readonly ok: true;
      readonly form: SaturatingForm;
      /** What the curve levels off at. */
      readonly height: number;
      /** 1 over the length on which it bends; for `tanh` the length is 1 / rate. */
      readonly rate: number;
      /** Standard error of ln(height), and of the rate; null where no freedom is left. */
      readonly logHeightError: number | null;
      readonly rateError: number | null;
      readonly rss: number;
      readonly freedom: number;
    }
  /**
   * Fewer than 3 different x; points that rise straight from the origin, so that no bend can be found; points that do
   * not rise at all; or a fit that did not settle.
   */
  | { readonly ok: false; readonly code: 'too-few-levels' | 'no-bend' | 'no-rise' | 'did-not-converge' };

/** Height of the curve at x. */
export function saturatingAt(form: SaturatingForm, height: number, rate: number, x: number): number {
  return height * shape(form, rate * x);
}

function shape(form: SaturatingForm, u: number): number {
  return form === 'tanh' ? Math.tanh(u) : -Math.expm1(-u);
}

function shapeSlope(form: SaturatingForm, u: number): number {
  return form === 'tanh' ? 1 / Math.cosh(u) ** 2 : Math.exp(-u);
}

/**
 * The saturating curve of least (weighted) squares. For each rate on a ladder the best height is known in closed form;
 * from the best of them the two are fitted together. Throws RangeError for points that are not positive.
 */
export function saturatingCurve(points: SaturatingPoints): SaturatingCurve {
  const { x, y, form, weights } = points;
  if (
    x.length !== y.length ||
    ![...x, ...y, ...(weights ?? [])].every((value) => value > 0 && Number.isFinite(value))
  ) {
    throw new RangeError('saturatingCurve needs as many y as x, all positive and finite');
  }
  if (new Set(x).size < 3) return { ok: false, code: 'too-few-levels' };
  const roots = x.map((_, i) => Math.sqrt(weights?.[i] ?? 1));
  const fitted = (rate: number) => x.map((value) => shape(form, rate * value));
  const profile = (rate: number) => profileOf(points, roots, fitted(rate));
  const least = Math.min(...x);
  const most = Math.max(...x);
  // From a curve that is straight over all of x to one that has levelled off before the first.
  const ladder = Array.from({ length: 81 }, (_, i) => (0.02 / most) * ((20 * most) / least / 0.02) ** (i / 80));
  const heights = ladder.map((rate) => profile(rate));
  const best = heights.reduce((low, { rss }, i) => (rss < (heights[low]?.rss ?? 0) ? i : low), 0);
  if (best === 0) return { ok: false, code: 'no-bend' };
  if (best === ladder.length - 1) return { ok: false, code: 'no-rise' };
  const start = [heights[best]?.logHeight ?? 0, ladder[best] ?? 1];
  const result = nonlinearLeastSquares(
    ([logHeight = 0, rate = 0]) => linearised(points, roots, logHeight, rate),
    start,
    [1e-3],
  );
  if (!result.ok) return { ok: false, code: 'did-not-converge' };
  const [logHeight = 0, rate = 0] = result.parameters;
  if (!(rate > (ladder[0] ?? 0))) return { ok: false, code: 'no-bend' };
  if (shape(form, rate * least) > 0.995) return { ok: false, code: 'no-rise' };
  return {
    ok: true,
    form,
    height: Math.exp(logHeight),
    rate,
    logHeightError: result.standardErrors?.[0] ?? null,
    rateError: result.standardErrors?.[1] ?? null,
    rss: result.rss,
    freedom: result.freedom,
  };
}

function profileOf({ y, scale }: SaturatingPoints, roots: readonly number[], shapes: readonly number[]) {
  let top = 0;
  let bottom = 0;
  shapes.forEach((g, i) => {
    const w = (roots[i] ?? 1) ** 2;
    top += scale === 'log' ? w * Math.log((y[i] ?? 1) / g) : w * g * (y[i] ?? 0);
    bottom += scale === 'log' ? w : w * g * g;
  });
  const logHeight = scale === 'log' ? top / bottom : Math.log(top / bottom);
  const rss = shapes.reduce((sum, g, i) => {
    const off = scale === 'log' ? Math.log((y[i] ?? 1) / g) - logHeight : (y[i] ?? 0) - Math.exp(logHeight) * g;
    return sum + ((roots[i] ?? 1) * off) ** 2;
  }, 0);
  return { logHeight, rss };
}

function linearised(
  { x, y, form, scale }: SaturatingPoints,
  roots: readonly number[],
  logHeight: number,
  rate: number,
) {
  const height = Math.exp(logHeight);
  const residuals: number[] = [];
  const byHeight: number[] = [];
  const byRate: number[] = [];
  x.forEach((at, i) => {
    const root = roots[i] ?? 1;
    const g = shape(form, rate * at);
    const slope = at * shapeSlope(form, rate * at);
    const value = y[i] ?? 1;
    residuals.push(root * (scale === 'log' ? Math.log(value / g) - logHeight : value - height * g));
    byHeight.push(root * (scale === 'log' ? 1 : height * g));
    byRate.push(root * (scale === 'log' ? slope / g : height * slope));
  });
  return { residuals, slopes: [byHeight, byRate] };
}
