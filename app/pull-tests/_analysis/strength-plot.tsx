import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import type { CurvePoint } from '@/lib/pulltest/lower-model';
import { modeText } from '@/lib/pulltest/pull-mode';
import { forceIn, lengthIn } from '@/lib/units/convert';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { PlotLegend } from './plot-legend';
import { failurePlace, PullSign } from './pull-shapes';

export interface StrengthPlotProps {
  readonly pulls: readonly JudgedPull[];
  /** Points of the middle and the lower value; empty where there are none. */
  readonly curve: readonly CurvePoint[];
  /** Depth by depth, without a line between the depths. */
  readonly isByDepth: boolean;
  readonly mixes: readonly { readonly id: string; readonly name: string }[];
  readonly demandN: number | null;
  /** The least load at which the wire itself broke; null where it never did. */
  readonly wireN: number | null;
  readonly units: UnitChoice;
}

const WIDTH = 760;
const HEIGHT = 420;
const EDGE = { left: 62, right: 96, top: 14, bottom: 46 };

/** Strength against depth: every reading, the middle with its band, the lower value, the demand and the wire. */
export function StrengthPlot(props: StrengthPlotProps) {
  const { pulls, curve, isByDepth, mixes, demandN, wireN, units } = props;
  const drawn = pulls.flatMap((pull) =>
    pull.record.loadN === null ? [] : [{ pull, loadN: pull.record.loadN, depthMm: pull.record.embedmentMm }],
  );
  if (drawn.length === 0) return null;
  const depths = drawn.map(({ depthMm }) => depthMm);
  const loads = [
    ...drawn.map(({ loadN }) => loadN),
    ...curve.map(({ middleBand, fittedN }) => middleBand?.highN ?? fittedN),
    demandN ?? 0,
    wireN ?? 0,
  ];
  const pad = Math.max(1, 0.08 * (Math.max(...depths) - Math.min(...depths)));
  const ofDepth = (value: number) => lengthIn(units.lengthUnit, value);
  const ofLoad = (value: number) => forceIn(units.forceUnit, value);
  const x = scaleLinear()
    .domain([ofDepth(Math.min(...depths) - pad), ofDepth(Math.max(...depths) + pad)])
    .range([EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear()
    .domain([0, ofLoad(Math.max(...loads)) * 1.06])
    .nice(6)
    .range([HEIGHT - EDGE.bottom, EDGE.top]);
  const [px, py] = [(depthMm: number) => x(ofDepth(depthMm)), (loadN: number) => y(ofLoad(loadN))];
  const mixOf = new Map(mixes.map((mix, index) => [mix.id, { index, name: mix.name }]));
  const depthTicks = [...new Set(depths)].sort((a, b) => a - b);
  const ticks = depthTicks.length <= 12 ? depthTicks : depthTicks.filter((_, i) => i % 3 === 0);
  return (
    <figure className="grid gap-3 rounded-sheet border border-line bg-sheet p-3 sm:p-4">
      {/* On a phone the plot keeps its size and is moved sideways. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached without a mouse */}
      <section className="overflow-x-auto" aria-label="Plot of strength against depth" tabIndex={0}>
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={summary(props)} className="w-full min-w-[38rem]">
          {y.ticks(6).map((tick) => (
            <g key={tick}>
              <path d={`M${EDGE.left} ${y(tick)}H${WIDTH - EDGE.right}`} className="stroke-line" />
              <text x={EDGE.left - 8} y={y(tick)} dy="0.35em" textAnchor="end" className="fill-ink-soft text-sm">
                {tick}
              </text>
            </g>
          ))}
          {ticks.map((depthMm) => (
            <text
              key={depthMm}
              x={px(depthMm)}
              y={HEIGHT - EDGE.bottom + 20}
              textAnchor="middle"
              className="fill-ink-soft text-sm"
            >
              {lengthText(depthMm, units.lengthUnit)}
            </text>
          ))}
          <text x={EDGE.left} y={HEIGHT - 6} className="fill-ink text-sm font-semibold">
            Depth of shank in glue
          </text>
          <text
            x={EDGE.left - 8}
            y={HEIGHT - EDGE.bottom + 20}
            textAnchor="end"
            className="fill-ink text-sm font-semibold"
          >
            {units.forceUnit}
          </text>
          <Curve curve={curve} isByDepth={isByDepth} px={px} py={py} />
          {demandN !== null && <Level y={py(demandN)} label="asked" dash="9 4" look="stroke-accent" />}
          {wireN !== null && <Level y={py(wireN)} label="wire broke" dash="2 4" look="stroke-ink" />}
          {drawn.map(({ pull, loadN, depthMm }) => {
            const mix = mixOf.get(pull.record.mixId);
            const place = failurePlace(pull.record.mode);
            return (
              <g
                key={pull.record.id}
                transform={`translate(${px(depthMm) + spread(mix?.index ?? 0, mixes.length)} ${py(loadN)})`}
              >
                <title>{`${mix?.name ?? ''}: ${forceText(loadN, units.forceUnit)}, ${modeText(pull.record.mode).toLowerCase()}`}</title>
                {pull.use.kind === 'at-least' && (
                  <path d="M0 -9V-22M-4 -17L0 -22L4 -17" className="fill-none stroke-chart-a" strokeWidth={2} />
                )}
                <PullSign
                  mix={mix?.index ?? 0}
                  mixName={mix?.name ?? ''}
                  place={place}
                  isOut={pull.use.kind === 'out'}
                />
              </g>
            );
          })}
        </svg>
      </section>
      <PlotLegend mixes={mixes} pulls={pulls} hasCurve={curve.length > 0} />
    </figure>
  );
}

/** Mixes stand a little beside each other, so that equal loads do not hide one another. */
function spread(index: number, mixes: number): number {
  const reach = Math.min(14, 4 * mixes);
  return mixes <= 1 ? 0 : (index / (mixes - 1) - 0.5) * reach;
}

interface CurveProps {
  readonly curve: readonly CurvePoint[];
  readonly isByDepth: boolean;
  readonly px: (depthMm: number) => number;
  readonly py: (loadN: number) => number;
}

function Curve({ curve, isByDepth, px, py }: CurveProps) {
  const last = curve.at(-1);
  if (last === undefined) return null;
  const labels = (
    <>
      <text x={px(last.depthMm) + 12} y={py(last.fittedN)} dy="0.35em" className="fill-chart-a text-sm font-semibold">
        middle
      </text>
      <text x={px(last.depthMm) + 12} y={py(last.lowerN)} dy="0.35em" className="fill-chart-b text-sm font-semibold">
        lower value
      </text>
    </>
  );
  if (isByDepth) {
    return (
      <g strokeWidth={3}>
        {curve.map(({ depthMm, fittedN, lowerN }) => (
          <g key={depthMm}>
            <path d={`M${px(depthMm) - 14} ${py(fittedN)}h28`} className="stroke-chart-a" />
            <path d={`M${px(depthMm) - 14} ${py(lowerN)}h28`} className="stroke-chart-b" />
          </g>
        ))}
        {labels}
      </g>
    );
  }
  const path = (of: (point: CurvePoint) => number) =>
    line<CurvePoint>()
      .x(({ depthMm }) => px(depthMm))
      .y((point) => py(of(point)))([...curve]) ?? '';
  const banded = curve.filter(({ middleBand }) => middleBand !== null);
  const band = area<CurvePoint>()
    .x(({ depthMm }) => px(depthMm))
    .y0(({ middleBand, fittedN }) => py(middleBand?.lowN ?? fittedN))
    .y1(({ middleBand, fittedN }) => py(middleBand?.highN ?? fittedN))([...banded]);
  return (
    <>
      <path d={band ?? ''} className="fill-chart-fill opacity-80" />
      <path d={path(({ fittedN }) => fittedN)} className="fill-none stroke-chart-a" strokeWidth={2} />
      <path
        d={path(({ lowerN }) => lowerN)}
        className="fill-none stroke-chart-b"
        strokeWidth={3}
        strokeDasharray="12 3"
      />
      {labels}
    </>
  );
}

interface LevelProps {
  readonly y: number;
  readonly label: string;
  readonly dash: string;
  readonly look: string;
}

function Level({ y, label, dash, look }: LevelProps) {
  return (
    <>
      <path d={`M${EDGE.left} ${y}H${WIDTH - EDGE.right}`} className={look} strokeWidth={2} strokeDasharray={dash} />
      <text x={WIDTH - EDGE.right + 4} y={y - 6} className="fill-ink text-sm">
        {label}
      </text>
    </>
  );
}

function summary({ pulls, curve, units, demandN }: StrengthPlotProps): string {
  const loads = pulls.flatMap(({ record }) => record.loadN ?? []);
  const text = (loadN: number) => forceText(loadN, units.forceUnit);
  const [first, last] = [curve[0], curve.at(-1)];
  const lower =
    first === undefined || last === undefined
      ? 'There is no lower value.'
      : `The lower value goes from ${text(first.lowerN)} at ${lengthText(first.depthMm, units.lengthUnit)} to ${text(last.lowerN)} at ${lengthText(last.depthMm, units.lengthUnit)}.`;
  const asked = demandN === null ? '' : ` Asked are ${text(demandN)}.`;
  return `${loads.length} readings from ${text(Math.min(...loads))} to ${text(Math.max(...loads))}. ${lower}${asked} The table below gives every reading.`;
}
