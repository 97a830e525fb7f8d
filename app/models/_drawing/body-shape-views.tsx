import type { Body } from '@/lib/geometry/body';
import type { HalfSize } from '@/lib/geometry/body-profile';
import { MM_PER_INCH } from '@/lib/units/convert';
import { lengthText } from '@/lib/units/format-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import type { DrawingFrame } from './drawing-frame';

/** Outline, middle line and stations of a body in one view. */
export function BodyOutline({
  body,
  size,
  frame,
}: {
  readonly body: Body;
  readonly size: HalfSize;
  readonly frame: DrawingFrame;
}) {
  const middle = size === 'halfHeightMm' ? frame.sideY : frame.topY;
  const x = (mm: number) => frame.noseX + (mm - frame.noseMm) * frame.pxPerMm;
  const along = (stations: Body['stations'], sign: number) =>
    stations.map((station) => `${x(station.xMm)} ${middle + sign * station[size] * frame.pxPerMm}`);
  const around = [...along(body.stations, -1), ...along(body.stations.toReversed(), 1)];
  return (
    <>
      <path
        d={`M${around.join('L')}Z`}
        className="fill-chart-fill stroke-ink"
        strokeWidth="1.75"
        strokeLinejoin="round"
      />
      <path
        d={body.stations
          .map(
            (station) =>
              `M${x(station.xMm)} ${middle - station[size] * frame.pxPerMm}v${2 * station[size] * frame.pxPerMm}`,
          )
          .join('')}
        className="stroke-line-strong"
        strokeWidth="0.5"
        opacity="0.5"
      />
      <path
        d={`M${x(body.noseMm)} ${middle}H${x(body.tailMm)}`}
        className="stroke-line-strong"
        strokeWidth="1"
        strokeDasharray="8 4"
      />
    </>
  );
}

/** A rule under the drawing, from the nose: inches or centimetres. */
export function ScaleRule({
  body,
  frame,
  unit,
}: {
  readonly body: Body;
  readonly frame: DrawingFrame;
  readonly unit: LengthUnit;
}) {
  const stepMm = unit === 'inch' ? MM_PER_INCH : 10;
  const steps = Math.floor((body.tailMm - body.noseMm) / stepMm + 1e-9);
  const x = (step: number) => frame.noseX + step * stepMm * frame.pxPerMm;
  const isNamed = (step: number) => unit === 'inch' || step % 2 === 0;
  return (
    <g className="text-xs">
      <path d={`M${x(0)} ${frame.scaleY}H${x(steps)}`} className="stroke-ink" />
      {Array.from({ length: steps + 1 }, (_, step) => step).map((step) => (
        <g key={step}>
          <path d={`M${x(step)} ${frame.scaleY - 4}v8`} className="stroke-ink" />
          {isNamed(step) && (
            <text x={x(step)} y={frame.scaleY + 19} textAnchor="middle" className="fill-ink-soft">
              {lengthText(step * stepMm, unit).replace(' mm', '')}
            </text>
          )}
        </g>
      ))}
      {unit === 'mm' && (
        <text x={frame.noseX + steps * stepMm * frame.pxPerMm + 12} y={frame.scaleY + 4} className="fill-ink-soft">
          mm
        </text>
      )}
    </g>
  );
}
