import { scaleLinear, scaleUtc } from 'd3-scale';
import { area, line } from 'd3-shape';
import { EmptyState } from '@/app/_ui/empty-state';
import { profilePieces } from '@/lib/cure/temperature-profile';
import { temperatureIn } from '@/lib/units/convert';
import { temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { ReadingBucket } from '@/prisma/data/sensors';
import type { ShopSettings } from '@/prisma/data/shop';
import { DayLabels } from './day-labels';
import { DayTable } from './day-table';
import { plotDays } from './plot-days';
import { plotRuns } from './plot-runs';

export interface ReadingsPlotProps {
  readonly buckets: readonly ReadingBucket[];
  readonly shop: ShopSettings;
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

const WIDTH = 1000;
const HEIGHT = 300;

/** Two weeks of readings over the usual week; where the log has a gap, the line has one too. */
export function ReadingsPlot({ buckets, shop, fromAt, toAt }: ReadingsPlotProps) {
  const { temperatureProfile, timeZone, temperatureUnit } = shop;
  const pieces = profilePieces(temperatureProfile, timeZone, fromAt, toAt);
  const all = [
    ...pieces.map((piece) => piece.temperatureC),
    ...buckets.flatMap((bucket) => [bucket.lowestC, bucket.highestC]),
  ];
  const y = scaleLinear()
    .domain([Math.min(...all) - 1, Math.max(...all) + 1].map((value) => temperatureIn(temperatureUnit, value)))
    .nice(5)
    .range([HEIGHT, 0]);
  const x = scaleUtc().domain([fromAt, toAt]).range([0, WIDTH]);
  const yOf = (temperatureC: number) => y(temperatureIn(temperatureUnit, temperatureC));
  const days = plotDays(buckets, timeZone, fromAt, toAt);
  const profilePath = pieces
    .map((piece, index) => `${index === 0 ? 'M' : 'L'}${x(piece.startAt)} ${yOf(piece.temperatureC)}H${x(piece.endAt)}`)
    .join('');
  const band = area<ReadingBucket>()
    .x((bucket) => x((bucket.firstAt + bucket.lastAt) / 2))
    .y0((bucket) => yOf(bucket.lowestC))
    .y1((bucket) => yOf(bucket.highestC));
  const middle = line<ReadingBucket>()
    .x((bucket) => x((bucket.firstAt + bucket.lastAt) / 2))
    .y((bucket) => yOf((bucket.lowestC + bucket.highestC) / 2));
  return (
    <div className="grid gap-4">
      {buckets.length === 0 && <NoReadings hasSensor={shop.cureSensorId !== null} />}
      <figure className="grid gap-2 rounded-sheet border border-line bg-sheet p-4">
        <div className="relative h-72">
          {y.ticks(5).map((tick) => (
            <span
              key={tick}
              aria-hidden="true"
              className="absolute left-0 -translate-y-1/2 bg-sheet pr-1 text-xs text-ink-soft"
              style={{ top: `${(y(tick) / HEIGHT) * 100}%` }}
            >
              {tick}°
            </span>
          ))}
          <svg
            viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
            preserveAspectRatio="none"
            role="img"
            aria-label={summary(buckets, shop)}
            className="absolute top-0 right-0 h-full w-[calc(100%-2.5rem)] overflow-visible"
          >
            {y.ticks(5).map((tick) => (
              <path key={tick} d={`M0 ${y(tick)}H${WIDTH}`} className="stroke-line" vectorEffect="non-scaling-stroke" />
            ))}
            {days.map((day) => (
              <path
                key={day.day}
                d={`M${x(day.startAt)} 0V${HEIGHT}`}
                className="stroke-line"
                vectorEffect="non-scaling-stroke"
              />
            ))}
            <path
              d={profilePath}
              className="fill-none stroke-chart-b"
              strokeWidth={2}
              strokeDasharray="6 4"
              vectorEffect="non-scaling-stroke"
            />
            {plotRuns(buckets).map((run) => (
              <g key={run[0]?.firstAt}>
                <path d={band([...run]) ?? ''} className="fill-chart-a opacity-25" />
                <path
                  d={middle([...run]) ?? ''}
                  className="fill-none stroke-chart-a"
                  strokeWidth={2}
                  strokeLinejoin="round"
                  vectorEffect="non-scaling-stroke"
                />
              </g>
            ))}
          </svg>
        </div>
        <DayLabels days={days} fromAt={fromAt} toAt={toAt} />
        <Legend />
      </figure>
      {buckets.length > 0 && <DayTable days={days} unit={temperatureUnit} />}
    </div>
  );
}

function summary(buckets: readonly ReadingBucket[], { temperatureUnit }: ShopSettings): string {
  if (buckets.length === 0) return 'No readings in the last two weeks; the usual week is drawn.';
  const text = (value: number) => temperatureText(value, temperatureUnit);
  const lowest = text(Math.min(...buckets.map((bucket) => bucket.lowestC)));
  const highest = text(Math.max(...buckets.map((bucket) => bucket.highestC)));
  return `Readings of two weeks between ${lowest} and ${highest}. The table below says it day by day.`;
}

function Legend() {
  return (
    <figcaption className="flex flex-wrap gap-x-6 gap-y-1 text-sm">
      <span className="inline-flex items-center gap-2">
        <svg viewBox="0 0 32 8" aria-hidden="true" className="w-8 stroke-chart-a stroke-2">
          <path d="M0 4h32" />
        </svg>
        readings; the band is from lowest to highest of half an hour
      </span>
      <span className="inline-flex items-center gap-2">
        <svg viewBox="0 0 32 8" aria-hidden="true" className="w-8 stroke-chart-b stroke-2">
          <path d="M0 4h32" strokeDasharray="6 4" />
        </svg>
        the usual week
      </span>
      <span>No line: no readings</span>
    </figcaption>
  );
}

function NoReadings({ hasSensor }: { readonly hasSensor: boolean }) {
  return (
    <EmptyState title={hasSensor ? 'No readings in the last two weeks' : 'No sensor rules the clocks yet'}>
      <p>
        A logger in the shop, best beside the drying pieces, makes the clocks true: a cold night then moves every
        release. Add a sensor below, then bring its file in, or let it post by itself with a token.
      </p>
      <p>Until then the usual week is taken, with its tolerance, and the clocks show how wide that makes them.</p>
    </EmptyState>
  );
}
