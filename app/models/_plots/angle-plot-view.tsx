'use client';

import { useId } from 'react';
import { useWidth } from '@/app/_ui/use-width';
import type { AnglePlot } from '@/lib/strength/angle-plot';
import type { FailureWay } from '@/lib/strength/strength-result';
import { forceText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { ASLANT_LOOK, BENDS_LOOK, LOWER_LOOK, MEDIAN_LOOK, NEEDED_LOOK, WIRE_LOOK } from './line-looks';
import { type LabelledLine, type LineLook, PLOT_MARGIN, PlotFrame } from './plot-frame';
import { angleScale, loadScale } from './plot-scales';

export interface AnglePlotViewProps {
  readonly plot: AnglePlot;
  /** The angle the anchor is made for; null: not entered. */
  readonly loadAngleDeg: number | null;
  readonly neededN: number | null;
  readonly units: UnitChoice;
}

/** Short names of the ways for the ends of their lines, and the looks of these. */
const WAYS: Readonly<Partial<Record<FailureWay, { readonly label: string; readonly look: LineLook }>>> = {
  'fold-over': { label: 'pulls out', look: ASLANT_LOOK },
  'tear-out': { label: 'tears out', look: ASLANT_LOOK },
  'screw-side': { label: 'screw', look: ASLANT_LOOK },
  'wire-in-eye': { label: 'wire', look: WIRE_LOOK },
  'eye-opens': { label: 'eye opens', look: WIRE_LOOK },
  'screw-core': { label: 'core', look: WIRE_LOOK },
  'screw-eye-stated': { label: 'eye', look: WIRE_LOOK },
  'through-wire': { label: 'wire', look: WIRE_LOOK },
  'eye-ovals': { label: 'eye ovals', look: { ...BENDS_LOOK, dash: '1.5 3' } },
  'first-bending': { label: 'bends', look: BENDS_LOOK },
};

/** Strength over the angle between load and shank, by each way of giving way. */
export function AnglePlotView({ plot, loadAngleDeg, neededN, units }: AnglePlotViewProps) {
  const [frame, widthPx] = useWidth<HTMLDivElement>(560);
  const id = useId();
  const heightPx = widthPx < 420 ? 280 : 340;
  const { x, ticks: xTicks } = angleScale(widthPx);
  const highest = Math.max(neededN ?? 0, ...plot.median.map(({ loadN }) => loadN));
  const { y, ticks: yTicks } = loadScale(1.08 * highest || 1, heightPx, units.forceUnit);
  const [bottom = 0, top = PLOT_MARGIN.top] = y.range();
  return (
    <div ref={frame} className="min-w-0">
      <PlotFrame
        widthPx={widthPx}
        heightPx={heightPx}
        x={x}
        y={y}
        xTicks={xTicks}
        yTicks={yTicks}
        xTitle="0° straight, 90° square"
        yTitle={`Load, ${units.forceUnit}`}
        lines={plotLines(plot, neededN)}
        clipId={`${id}clip`}
        summary={summary(plot, units)}
        over={
          loadAngleDeg !== null && (
            <path d={`M${x(loadAngleDeg)} ${bottom}V${top}`} className="stroke-ink" strokeWidth="1" />
          )
        }
      />
    </div>
  );
}

function plotLines(plot: AnglePlot, neededN: number | null): readonly LabelledLine[] {
  const needed: LabelledLine[] =
    neededN === null
      ? []
      : [
          {
            id: 'needed',
            label: 'must hold',
            look: NEEDED_LOOK,
            pieces: [[0, 90].map((at) => ({ at, loadN: neededN }))],
          },
        ];
  const ways = plot.ways.flatMap(({ way, points }): LabelledLine[] => {
    const known = WAYS[way];
    return known === undefined ? [] : [{ id: way, ...known, pieces: [points] }];
  });
  return [
    ...needed,
    ...ways,
    { id: 'median', label: 'middle', look: MEDIAN_LOOK, pieces: plot.median.length === 0 ? [] : [plot.median] },
    { id: 'lower', label: 'lower', look: LOWER_LOOK, pieces: plot.lower.length === 0 ? [] : [plot.lower] },
  ];
}

function summary({ lower }: AnglePlot, units: UnitChoice): string {
  const at = (angle: number) => lower.find((point) => point.at === angle)?.loadN;
  const text = [0, 45, 90].flatMap((angle) => {
    const loadN = at(angle);
    return loadN === undefined ? [] : [`${forceText(loadN, units.forceUnit)} at ${angle}°`];
  });
  return text.length === 0 ? 'No estimate at any angle.' : `Lower value over the load's angle: ${text.join(', ')}.`;
}
