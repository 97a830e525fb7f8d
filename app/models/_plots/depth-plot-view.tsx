'use client';

import { useId } from 'react';
import { useWidth } from '@/app/_ui/use-width';
import type { BrokenCurve, DepthPlot, PublishedCurve } from '@/lib/strength/depth-plot';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import {
  ASLANT_LOOK,
  DEMAND_LOOK,
  LOWER_LOOK,
  MEDIAN_LOOK,
  NEEDED_LOOK,
  PUBLISHED_LOOK,
  WIRE_LOOK,
} from './line-looks';
import { type LabelledLine, type LineLook, PLOT_MARGIN, PlotFrame, type PlotScale } from './plot-frame';
import { depthScale, loadScale } from './plot-scales';

export interface DepthPlotViewProps {
  readonly plot: DepthPlot;
  /** The anchor's depth as it is now; null: not entered. */
  readonly embedmentMm: number | null;
  /** Greatest load of the line, and that with the shop's factor; null: no line. */
  readonly demandN: number | null;
  readonly neededN: number | null;
  readonly areOthersShown: boolean;
  readonly units: UnitChoice;
}

/** Strength over the depth of the shank: estimate, what it must hold, where nothing is said, and other formulas. */
export function DepthPlotView({ plot, embedmentMm, demandN, neededN, areOthersShown, units }: DepthPlotViewProps) {
  const [frame, widthPx] = useWidth<HTMLDivElement>(560);
  const id = useId();
  const heightPx = widthPx < 420 ? 280 : 340;
  const { x, ticks: xTicks } = depthScale(plot.deepestMm, widthPx, units.lengthUnit);
  const { y, ticks: yTicks } = loadScale(topLoadN(plot, neededN), heightPx, units.forceUnit);
  const lines = plotLines(plot, demandN, neededN);
  return (
    <div ref={frame} className="min-w-0">
      <PlotFrame
        widthPx={widthPx}
        heightPx={heightPx}
        x={x}
        y={y}
        xTicks={xTicks}
        yTicks={yTicks}
        xTitle={`Depth of shank, ${units.lengthUnit === 'inch' ? 'in' : 'mm'}`}
        yTitle={`Load, ${units.forceUnit}`}
        lines={lines}
        clipId={`${id}clip`}
        summary={summary(plot, embedmentMm, neededN, units)}
        under={
          <>
            <Silence plot={plot} x={x} bottomPx={heightPx - PLOT_MARGIN.bottom} patternId={`${id}hatch`} />
            {areOthersShown && <Others curves={plot.published} x={x} y={y} />}
          </>
        }
        over={embedmentMm !== null && <NowMark plot={plot} atMm={embedmentMm} x={x} y={y} />}
      />
    </div>
  );
}

function plotLines(plot: DepthPlot, demandN: number | null, neededN: number | null): readonly LabelledLine[] {
  const across = (loadN: number): BrokenCurve => [
    [
      { at: 0, loadN },
      { at: plot.deepestMm, loadN },
    ],
  ];
  const level = (id: string, label: string, look: LineLook, loadN: number | null): LabelledLine[] =>
    loadN === null ? [] : [{ id, label, look, pieces: across(loadN) }];
  const aslant: LabelledLine[] =
    plot.lowerAtAngle.length === 0
      ? []
      : [{ id: 'aslant', label: 'aslant', look: ASLANT_LOOK, pieces: plot.lowerAtAngle }];
  return [
    ...level('demand', 'line', DEMAND_LOOK, demandN),
    ...level('needed', 'must hold', NEEDED_LOOK, neededN),
    ...level('wire', 'wire', WIRE_LOOK, plot.wireLimitN),
    { id: 'median', label: 'middle', look: MEDIAN_LOOK, pieces: plot.median },
    ...aslant,
    { id: 'lower', label: 'lower', look: LOWER_LOOK, pieces: plot.lower },
  ];
}

/** Highest load that must be seen: the estimate and what it must hold; the wire's limit only where it is near. */
function topLoadN(plot: DepthPlot, neededN: number | null): number {
  const highest = Math.max(neededN ?? 0, ...plot.median.flat().map(({ loadN }) => loadN));
  const wire = plot.wireLimitN ?? 0;
  return 1.08 * (wire <= 1.5 * highest ? Math.max(highest, wire) : highest) || 1;
}

interface SilenceProps {
  readonly plot: DepthPlot;
  readonly x: PlotScale;
  readonly bottomPx: number;
  readonly patternId: string;
}

function Silence({ plot, x, bottomPx, patternId }: SilenceProps) {
  return (
    <>
      <defs>
        <pattern id={patternId} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V7" className="stroke-line-strong" strokeWidth="1" opacity="0.6" />
        </pattern>
      </defs>
      {plot.silent.map(({ fromMm, toMm }) => {
        const wide = x(toMm) - x(fromMm);
        return (
          <g key={fromMm}>
            <rect
              x={x(fromMm)}
              y={PLOT_MARGIN.top}
              width={wide}
              height={bottomPx - PLOT_MARGIN.top}
              fill={`url(#${patternId})`}
            />
            <text
              transform={`translate(${x(fromMm) + wide / 2 + 4} ${bottomPx - 8}) rotate(-90)`}
              className="fill-ink stroke-sheet"
              strokeWidth="4"
              paintOrder="stroke"
            >
              no estimate
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Other formulas as thin lines, each with its number on it; the numbers stand at different depths. */
function Others({
  curves,
  x,
  y,
}: {
  readonly curves: readonly PublishedCurve[];
  readonly x: PlotScale;
  readonly y: PlotScale;
}) {
  return (
    <>
      {curves.map(({ id, points }, index) => {
        const tag = points[2 + ((index * 3) % (points.length - 3))];
        const path = points.map(({ at, loadN }, k) => `${k === 0 ? 'M' : 'L'}${x(at)} ${y(loadN)}`).join('');
        return (
          <g key={id}>
            <path d={path} className={`fill-none ${PUBLISHED_LOOK.className}`} strokeWidth={PUBLISHED_LOOK.widthPx} />
            {tag !== undefined && (
              <g transform={`translate(${x(tag.at)} ${y(tag.loadN)})`}>
                <circle r="8" className="fill-sheet stroke-line-strong" strokeWidth="0.75" />
                <text y="4" textAnchor="middle" className="fill-ink-soft stroke-none" fontSize="11">
                  {index + 1}
                </text>
              </g>
            )}
          </g>
        );
      })}
    </>
  );
}

function NowMark({
  plot,
  atMm,
  x,
  y,
}: {
  readonly plot: DepthPlot;
  readonly atMm: number;
  readonly x: PlotScale;
  readonly y: PlotScale;
}) {
  const lower = valueAt(plot.lower, atMm);
  const [bottom = 0, top = 0] = y.range();
  return (
    <>
      <path d={`M${x(atMm)} ${bottom}V${top}`} className="stroke-ink" strokeWidth="1" />
      {lower !== null && (
        <circle cx={x(atMm)} cy={y(lower)} r="5.5" className="fill-sheet stroke-ink" strokeWidth="2.5" />
      )}
    </>
  );
}

/** A broken curve's value at a depth, straight between its points; null where it is silent. */
export function valueAt(curve: BrokenCurve, at: number): number | null {
  for (const piece of curve) {
    for (const [k, point] of piece.entries()) {
      if (point.at === at) return point.loadN;
      const next = piece[k + 1];
      if (next === undefined || at < point.at || at > next.at) continue;
      return point.loadN + ((at - point.at) / (next.at - point.at)) * (next.loadN - point.loadN);
    }
  }
  return null;
}

function summary(plot: DepthPlot, embedmentMm: number | null, neededN: number | null, units: UnitChoice): string {
  const force = (loadN: number) => forceText(loadN, units.forceUnit);
  const needed = neededN === null ? '' : ` It must hold ${force(neededN)}.`;
  if (embedmentMm === null) return `Strength over depth of the shank.${needed} No depth was entered.`;
  const depth = lengthText(embedmentMm, units.lengthUnit);
  const [lower, median] = [valueAt(plot.lower, embedmentMm), valueAt(plot.median, embedmentMm)];
  if (lower === null || median === null) return `Strength over depth of the shank. No estimate at ${depth}.${needed}`;
  return `Strength over depth of the shank. At ${depth} about ${force(median)}, lower value ${force(lower)}.${needed}`;
}
