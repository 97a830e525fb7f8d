import { scaleLinear } from 'd3-scale';
import { forceIn, MM_PER_INCH } from '@/lib/units/convert';
import { lengthText } from '@/lib/units/format-quantity';
import type { ForceUnit, LengthUnit } from '@/lib/units/unit-choice';
import { PLOT_MARGIN, type PlotScale } from './plot-frame';

export interface PlotTick {
  readonly at: number;
  readonly text: string;
}

/** Loads from 0 to a round number over `topN`, with ticks in the shop's unit. */
export function loadScale(
  topN: number,
  heightPx: number,
  unit: ForceUnit,
): { y: PlotScale; ticks: readonly PlotTick[] } {
  const inUnit = scaleLinear()
    .domain([0, Math.max(1, forceIn(unit, topN))])
    .nice(5);
  const perUnit = forceIn(unit, 1);
  const top = inUnit.domain()[1] ?? 1;
  const y = scaleLinear()
    .domain([0, top / perUnit])
    .range([heightPx - PLOT_MARGIN.bottom, PLOT_MARGIN.top]);
  return { y, ticks: inUnit.ticks(5).map((value) => ({ at: value / perUnit, text: String(value) })) };
}

/** Depths from 0 to `deepestMm`, with ticks as a rule has them: quarters of an inch or centimetres. */
export function depthScale(
  deepestMm: number,
  widthPx: number,
  unit: LengthUnit,
): { x: PlotScale; ticks: readonly PlotTick[] } {
  const x = scaleLinear()
    .domain([0, deepestMm])
    .range([PLOT_MARGIN.left, widthPx - PLOT_MARGIN.right]);
  const inner = widthPx - PLOT_MARGIN.left - PLOT_MARGIN.right;
  const fine = unit === 'inch' ? MM_PER_INCH / 4 : 5;
  const step = inner / (deepestMm / fine) < 44 ? 2 * fine : fine;
  const count = Math.floor(deepestMm / step + 1e-9);
  const ticks = Array.from({ length: count + 1 }, (_, k) => ({
    at: k * step,
    text: unit === 'inch' ? lengthText(k * step, unit) : String(k * step),
  }));
  return { x, ticks };
}

/** Angles from 0 to 90 degrees. */
export function angleScale(widthPx: number): { x: PlotScale; ticks: readonly PlotTick[] } {
  const x = scaleLinear()
    .domain([0, 90])
    .range([PLOT_MARGIN.left, widthPx - PLOT_MARGIN.right]);
  const step = widthPx < 420 ? 30 : 15;
  const ticks = Array.from({ length: 90 / step + 1 }, (_, k) => ({ at: k * step, text: `${k * step}°` }));
  return { x, ticks };
}
