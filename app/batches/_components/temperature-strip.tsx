import { scaleLinear, scaleUtc } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { TemperatureCourse } from '@/lib/cure/course';
import { temperatureText } from '@/lib/units/format-quantity';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { type CoursePoint, courseRuns } from './course-points';
import type { Place, TimeRange } from './timeline-range';

export interface TemperatureStripProps {
  readonly course: TemperatureCourse;
  readonly range: TimeRange;
  readonly place: Place;
  readonly y: number;
  readonly height: number;
  readonly unit: TemperatureUnit;
  /** Below this a mix of the batch does not cure. */
  readonly leastC: number | null;
}

const WIDTH = 1000;
const TOP_PX = 26;

/** The temperature under the bars: readings as a full line, the usual week as a broken one, the plausible band behind. */
export function TemperatureStrip({ course, range, y, height, unit, leastC }: TemperatureStripProps) {
  const runs = courseRuns(course, range);
  const points = runs.flatMap((run) => run.points);
  if (points.length === 0) return null;
  const lowC = Math.min(...points.map((point) => point.lowC));
  const highC = Math.max(...points.map((point) => point.highC));
  const inner = height - TOP_PX - 6;
  const x = scaleUtc().domain([range.fromAt, range.toAt]).range([0, WIDTH]).clamp(true);
  const degrees = scaleLinear()
    .domain([lowC - 0.5, highC + 0.5])
    .range([inner, 0]);
  const bandOf = area<CoursePoint>(
    (point) => x(point.at),
    (point) => degrees(point.lowC),
    (point) => degrees(point.highC),
  );
  const lineOf = line<CoursePoint>(
    (point) => x(point.at),
    (point) => degrees(point.centralC),
  );
  const least = leastC !== null && leastC > lowC && leastC < highC ? degrees(leastC) : null;
  return (
    <g transform={`translate(0 ${y})`}>
      <text x="0" y="16" className="fill-ink text-xs font-semibold">
        Temperature, {temperatureText(lowC, unit)} to {temperatureText(highC, unit)}
      </text>
      <svg
        aria-hidden="true"
        x="0"
        y={TOP_PX}
        width="100%"
        height={inner}
        viewBox={`0 0 ${WIDTH} ${inner}`}
        preserveAspectRatio="none"
      >
        {runs.map((run) => (
          <g key={run.points[0]?.at}>
            <path d={bandOf(run.points) ?? ''} className="fill-chart-fill" />
            <path
              d={lineOf(run.points) ?? ''}
              className="fill-none stroke-chart-a"
              strokeWidth="2"
              strokeDasharray={run.isRead ? undefined : '5 4'}
              vectorEffect="non-scaling-stroke"
            />
          </g>
        ))}
        {least !== null && (
          <line
            x1="0"
            x2={WIDTH}
            y1={least}
            y2={least}
            className="stroke-accent"
            strokeWidth="1.5"
            strokeDasharray="2 3"
            vectorEffect="non-scaling-stroke"
          />
        )}
      </svg>
      {least !== null && leastC !== null && (
        <text x="100%" y={TOP_PX + least - 4} textAnchor="end" className="fill-accent text-xs font-semibold">
          no cure counted below {temperatureText(leastC, unit)}
        </text>
      )}
    </g>
  );
}
