import type { ScaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { ReactNode } from 'react';
import type { CurvePoint } from '@/lib/strength/depth-plot';
import { labelPlaces } from './label-places';

/** How a line looks: its dash tells it from the others without its colour. */
export interface LineLook {
  readonly className: string;
  readonly widthPx: number;
  readonly dash?: string;
}

/** A line with its name at its end. */
export interface LabelledLine {
  readonly id: string;
  readonly label: string;
  readonly look: LineLook;
  /** In pieces, where it is broken. */
  readonly pieces: readonly (readonly CurvePoint[])[];
}

export type PlotScale = ScaleLinear<number, number>;

export interface PlotFrameProps {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly x: PlotScale;
  readonly y: PlotScale;
  readonly xTicks: readonly { readonly at: number; readonly text: string }[];
  readonly yTicks: readonly { readonly at: number; readonly text: string }[];
  readonly xTitle: string;
  readonly yTitle: string;
  readonly lines: readonly LabelledLine[];
  readonly summary: string;
  /** Drawn under the lines, and over them; both cut off at the plot's edge. */
  readonly under?: ReactNode;
  readonly over?: ReactNode;
  readonly clipId: string;
}

/** Room round a plot for its numbers and the names of its lines, px. */
export const PLOT_MARGIN = { top: 26, right: 82, bottom: 44, left: 46 } as const;
const LABEL_GAP_PX = 15;

/** Axes, lines and their names: everything that two plots have in common. */
export function PlotFrame(props: PlotFrameProps) {
  const { widthPx, heightPx, x, y, xTicks, yTicks, xTitle, yTitle, lines, summary, under, over, clipId } = props;
  const right = widthPx - PLOT_MARGIN.right;
  const bottom = heightPx - PLOT_MARGIN.bottom;
  const innerWidth = right - PLOT_MARGIN.left;
  const innerHeight = bottom - PLOT_MARGIN.top;
  const path = line<CurvePoint>()
    .x((point) => x(point.at))
    .y((point) => y(point.loadN));
  const ends = lines
    .map(({ pieces }) => pieces.at(-1)?.at(-1))
    .map((end) => (end === undefined ? bottom : y(end.loadN)));
  const places = labelPlaces(ends, { gap: LABEL_GAP_PX, low: PLOT_MARGIN.top + 4, high: bottom - 4 });
  return (
    <svg width={widthPx} height={heightPx} role="img" aria-label={summary} className="block max-w-full text-xs">
      <defs>
        <clipPath id={clipId}>
          <rect x={PLOT_MARGIN.left} y={PLOT_MARGIN.top} width={innerWidth} height={innerHeight} />
        </clipPath>
      </defs>
      {yTicks.map(({ at, text }) => (
        <g key={at}>
          <path d={`M${PLOT_MARGIN.left} ${y(at)}H${right}`} className="stroke-line" />
          <text x={PLOT_MARGIN.left - 6} y={y(at) + 4} textAnchor="end" className="fill-ink-soft">
            {text}
          </text>
        </g>
      ))}
      <g clipPath={`url(#${clipId})`}>{under}</g>
      {xTicks.map(({ at, text }) => (
        <g key={at}>
          <path d={`M${x(at)} ${bottom}v5`} className="stroke-line-strong" />
          <text x={x(at)} y={bottom + 18} textAnchor="middle" className="fill-ink-soft">
            {text}
          </text>
        </g>
      ))}
      <path d={`M${PLOT_MARGIN.left} ${PLOT_MARGIN.top}V${bottom}H${right}`} className="fill-none stroke-line-strong" />
      <text x={PLOT_MARGIN.left} y={heightPx - 6} className="fill-ink-soft">
        {xTitle}
      </text>
      <text x={2} y={13} className="fill-ink-soft">
        {yTitle}
      </text>
      <g clipPath={`url(#${clipId})`} className="fill-none" strokeLinejoin="round">
        {lines.map(({ id, look, pieces }) =>
          pieces.map((piece) => (
            <path
              key={`${id} ${piece[0]?.at}`}
              d={path([...piece]) ?? ''}
              className={look.className}
              strokeWidth={look.widthPx}
              strokeDasharray={look.dash}
            />
          )),
        )}
        {over}
      </g>
      {lines.map(({ id, label, look, pieces }, index) => {
        const end = pieces.at(-1)?.at(-1);
        if (end === undefined) return null;
        const at = places[index] ?? 0;
        const isAbove = y(end.loadN) < PLOT_MARGIN.top;
        return (
          <g key={id}>
            <path
              d={`M${Math.min(right, x(end.at)) + 1} ${Math.max(PLOT_MARGIN.top, y(end.loadN))}L${right + 6} ${at}`}
              className="fill-none stroke-line-strong"
              strokeWidth={0.75}
            />
            <path
              d={`M${right + 6} ${at}h12`}
              className={look.className}
              strokeWidth={look.widthPx}
              strokeDasharray={look.dash}
            />
            <text x={right + 21} y={at + 4} className="fill-ink">
              {isAbove ? `${label} ↑` : label}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
