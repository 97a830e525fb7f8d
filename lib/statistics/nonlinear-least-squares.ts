import { coefficientVariances, leastSquares } from '@/lib/statistics/least-squares';

/** A model at some parameters: its residuals (given less fitted) and how the fitted values change with each parameter. */
export interface Linearised {
  readonly residuals: readonly number[];
  /** Derivatives of the fitted values, one column a parameter, each as long as the residuals. */
  readonly slopes: readonly (readonly number[])[];
}

export type NonlinearResult =
  | {
      readonly ok: true;
      readonly parameters: readonly number[];
      readonly rss: number;
      readonly freedom: number;
      /** From the linearised model; null where no freedom is left. */
      readonly standardErrors: readonly number[] | null;
    }
  /** Fewer readings than parameters, or a valley without a lowest point within the steps allowed. */
  | { readonly ok: false; readonly code: 'too-few-rows' | 'did-not-converge' };

/** Dampings tried one after the other from the same start: a bold first step may land on a far plateau. */
const FIRST_DAMPINGS = [1e-3, 10, 1e4] as const;
const MOST_STEPS = 3000;
/** A full step that changes each parameter by less than this share of itself, or nothing that could be seen, is the end. */
const SETTLED = 1e-9;
/** Share of a sum of squares that rounding may move. */
const UNRESOLVED = 1e-12;
const LARGEST = 1e130;

/**
 * Parameters that make the sum of squared residuals least, from a start, by the method of Levenberg and Marquardt.
 *
 * `dampings`: first dampings to try, all of them by default; one is enough from a start near the end.
 * For weighted fits the model multiplies residuals and slopes by the roots of the weights. Several first dampings are
 * tried and the lowest sum of squares that settled is kept. A model that is not finite at a trial step is a step too
 * far; at the start it is a RangeError.
 * Source: D. W. Marquardt (1963), with the scaling of J. J. More (1978) and the damping of H. B. Nielsen (1999), from
 * memory. Digits reached on the NIST StRD sets are in tests/outside.
 */
export function nonlinearLeastSquares(
  model: (parameters: readonly number[]) => Linearised,
  start: readonly number[],
  dampings: readonly number[] = FIRST_DAMPINGS,
): NonlinearResult {
  const first = model(start);
  if (!Number.isFinite(squares(first.residuals))) {
    throw new RangeError('nonlinearLeastSquares needs a model that is finite at the start');
  }
  const freedom = first.residuals.length - start.length;
  if (freedom < 0) return { ok: false, code: 'too-few-rows' };
  let best: { parameters: readonly number[]; at: Linearised } | null = null;
  for (const damping of dampings) {
    const run = descent(model, start, damping);
    if (run !== null && (best === null || squares(run.at.residuals) < squares(best.at.residuals))) best = run;
  }
  if (best === null) return { ok: false, code: 'did-not-converge' };
  const rss = squares(best.at.residuals);
  const linear = leastSquares(best.at.slopes, best.at.residuals);
  if (!linear.ok) return { ok: false, code: 'did-not-converge' };
  const standardErrors =
    freedom > 0 ? coefficientVariances(linear).map((variance) => Math.sqrt((variance * rss) / freedom)) : null;
  return { ok: true, parameters: best.parameters, rss, freedom, standardErrors };
}

function squares(residuals: readonly number[]): number {
  return residuals.reduce((sum, e) => sum + e * e, 0);
}

/** Walks down from the start; null where it does not settle. */
function descent(
  model: (parameters: readonly number[]) => Linearised,
  start: readonly number[],
  firstDamping: number,
): { parameters: readonly number[]; at: Linearised } | null {
  let parameters = start;
  let at = model(start);
  let rss = squares(at.residuals);
  let damping = firstDamping;
  let growth = 2;
  const scale = start.map(() => 0);
  for (let step = 0; step < MOST_STEPS; step++) {
    at.slopes.forEach((column, j) => {
      scale[j] = Math.max(scale[j] ?? 0, Math.sqrt(squares(column)));
    });
    const straight = dampedStep(at, at.residuals, scale, damping);
    if (straight === null) return null;
    const change = bent(model, parameters, at, straight, (side) => dampedStep(at, side, scale, damping));
    const trial = parameters.map((value, j) => value + (change[j] ?? 0));
    const next = model(trial);
    const nextRss = squares(next.residuals);
    // Near the bottom the sum of squares no longer resolves a step; there the linear model is trusted instead.
    const isFlat = Math.abs(rss - nextRss) <= UNRESOLVED * rss;
    if (nextRss < rss || isFlat) {
      const gain = isFlat ? 1 : (rss - nextRss) / predictedFall(at, straight, scale, damping);
      parameters = trial;
      at = next;
      rss = nextRss;
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
    }
    if (isSettled(at, parameters)) return { parameters, at };
    if (!(damping < 1e30)) return null;
  }
  return null;
}
function predictedFall(at: Linearised, change: readonly number[], scale: readonly number[], damping: number): number {
  let moved = 0;
  at.residuals.forEach((_, i) => {
    moved += at.slopes.reduce((sum, column, j) => sum + (column[i] ?? 0) * (change[j] ?? 0), 0) ** 2;
  });
  const held = change.reduce((sum, value, j) => sum + (value * (scale[j] ?? 0)) ** 2, 0);
  return moved + 2 * damping * held;
}

/**
 * The step bent along the valley by half the second derivative of the model in its direction, where that is smaller
 * than the step itself. Source: M. K. Transtrum, J. P. Sethna (2012), geodesic acceleration, from memory.
 */
function bent(
  model: (parameters: readonly number[]) => Linearised,
  parameters: readonly number[],
  at: Linearised,
  straight: readonly number[],
  solve: (side: readonly number[]) => readonly number[] | null,
): readonly number[] {
  const h = 0.1;
  const ahead = model(parameters.map((value, j) => value + h * (straight[j] ?? 0))).residuals;
  const side = at.residuals.map((residual, i) => {
    const slope = at.slopes.reduce((sum, column, j) => sum + (column[i] ?? 0) * (straight[j] ?? 0), 0);
    return ((ahead[i] ?? 0) - residual + h * slope) / (h * h);
  });
  if (!side.every((value) => Math.abs(value) < LARGEST)) return straight;
  const bend = solve(side);
  const isShort = bend?.every((value, j) => Math.abs(value) <= 0.75 * Math.abs(straight[j] ?? 0)) ?? false;
  return bend !== null && isShort ? straight.map((value, j) => value + (bend[j] ?? 0)) : straight;
}

/** The least-squares step with each parameter held back by the damping; null where the slopes do not allow one. */
function dampedStep(
  at: Linearised,
  side: readonly number[],
  scale: readonly number[],
  damping: number,
): readonly number[] | null {
  const root = Math.sqrt(damping);
  const columns = at.slopes.map((column, j) => [
    ...column,
    ...scale.map((size, k) => (k === j ? root * (size > 0 ? size : 1) : 0)),
  ]);
  if (!columns.every((column) => column.every((v) => Math.abs(v) < LARGEST))) return null;
  const fit = leastSquares(columns, [...side, ...scale.map(() => 0)]);
  return fit.ok ? fit.coefficients : null;
}

/** Whether a full, undamped step would change nothing any more. */
function isSettled(at: Linearised, parameters: readonly number[]): boolean {
  if (!at.slopes.every((column) => column.every((v) => Math.abs(v) < LARGEST))) return false;
  const full = leastSquares(at.slopes, at.residuals);
  if (!full.ok) return false;
  const size = Math.sqrt(squares(at.residuals));
  return full.coefficients.every((value, j) => {
    const effect = Math.abs(value) * Math.sqrt(squares(at.slopes[j] ?? []));
    return Math.abs(value) <= SETTLED * Math.abs(parameters[j] ?? 0) || effect <= 0.01 * SETTLED * size;
  });
}
