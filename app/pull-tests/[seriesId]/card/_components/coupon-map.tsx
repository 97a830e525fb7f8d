import type { CouponLayout, CouponPlace } from '@/lib/pulltest/coupon-layout';
import { lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { PullSeries } from '@/prisma/data/pull-series';

export interface CouponMapProps {
  readonly layout: CouponLayout;
  readonly series: PullSeries;
  readonly units: UnitChoice;
}

/** Where each specimen stands on its board, seen from above, to scale. */
export function CouponMap({ layout, series, units }: CouponMapProps) {
  const { board } = series.plan;
  if (!layout.ok || board === null) return null;
  const depths = new Map(series.specimens.map(({ code, depthMm }) => [code, lengthText(depthMm, units.lengthUnit)]));
  const boards = Array.from({ length: layout.boards }, (_, index) => index + 1);
  const text = (mm: number) => lengthText(mm, units.lengthUnit);
  return (
    <section className="grid gap-3">
      <h2 className="text-lg font-bold">Board</h2>
      <p>
        Holes {text(board.edgeMm)} from the edge and {text(board.spacingMm)} from each other, from middle to middle.
        Nothing of the jig may press on the wood nearer to a hole than {text(layout.jigClearMm)}.
      </p>
      {boards.map((number) => (
        <figure key={number} className="grid gap-1 break-inside-avoid">
          <figcaption className="font-semibold">
            Board {number} of {layout.boards}, {text(board.lengthMm)} by {text(board.widthMm)}
          </figcaption>
          <BoardDrawing
            places={layout.places.filter((place) => place.board === number)}
            lengthMm={board.lengthMm}
            widthMm={board.widthMm}
            labelOf={(code) => depths.get(code) ?? ''}
          />
        </figure>
      ))}
    </section>
  );
}

interface BoardDrawingProps {
  readonly places: readonly CouponPlace[];
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly labelOf: (code: string) => string;
}

function BoardDrawing({ places, lengthMm, widthMm, labelOf }: BoardDrawingProps) {
  const size = Math.max(3, Math.min(6, lengthMm / 45));
  const list = places.map(({ specimenId }) => `${specimenId} (${labelOf(specimenId)})`).join(', ');
  return (
    <svg
      viewBox={`-1 -1 ${lengthMm + 2} ${widthMm + 2}`}
      role="img"
      aria-label={`From left to right, from the lower edge up: ${list}`}
      className="w-full max-w-3xl bg-sheet text-ink"
    >
      <rect width={lengthMm} height={widthMm} className="fill-none stroke-ink" strokeWidth={0.8} />
      {places.map(({ specimenId, xMm, yMm }) => (
        <g key={specimenId} transform={`translate(${xMm} ${widthMm - yMm})`}>
          <circle r={1.2} className="fill-ink" />
          <text y={-size * 0.6} textAnchor="middle" className="fill-ink font-bold" fontSize={size}>
            {specimenId}
          </text>
          <text y={size * 1.35} textAnchor="middle" className="fill-ink" fontSize={size * 0.85}>
            {labelOf(specimenId)}
          </text>
        </g>
      ))}
    </svg>
  );
}
