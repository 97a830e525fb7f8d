'use client';

import { memo } from 'react';
import type { Instant } from '@/lib/units/instant';
import { Row } from './timeline-row';
import type { TimelineRow } from './timeline-rows';
import { type Drawn, placeOf, type Scale } from './timeline-scale';
import type { BenchSession } from './timeline-sessions';
import type { Tick } from './timeline-ticks';

export interface TimelineBodyProps {
  readonly rows: readonly TimelineRow[];
  readonly tops: readonly number[];
  /** The rows in view: from the first up to the end. */
  readonly firstRow: number;
  readonly endRow: number;
  /** Drawn behind everything: what lies between them are the nights. */
  readonly sessions: readonly BenchSession[];
  readonly ticks: readonly Tick[];
  readonly drawn: Drawn;
  readonly scale: Scale;
  readonly zone: string;
  readonly nowAt: Instant;
  readonly conflicts: ReadonlySet<string>;
}

/** Everything under the head that stays where it is while something is moved. */
export const TimelineBody = memo(function TimelineBody(props: TimelineBodyProps) {
  const { rows, tops, firstRow, endRow, sessions, ticks, drawn, scale, zone, nowAt, conflicts } = props;
  const [top, bottom] = [tops[firstRow] ?? 0, tops[endRow] ?? 0];
  const place = (at: Instant) => placeOf(at, scale);
  return (
    <>
      {sessions
        .filter(({ startAt, endAt }) => startAt < drawn.toAt && endAt > drawn.fromAt)
        .map(({ startAt, endAt }) => (
          <rect
            key={startAt}
            x={place(startAt)}
            y={top}
            width={Math.max(1, place(endAt) - place(startAt))}
            height={bottom - top}
            className="fill-ground"
          />
        ))}
      {ticks.map(({ at, isStrong }) => (
        <line
          key={at}
          x1={place(at)}
          x2={place(at)}
          y1={top}
          y2={bottom}
          className={isStrong ? 'stroke-line-strong' : 'stroke-line'}
          strokeWidth={isStrong ? 1 : 0.5}
        />
      ))}
      {rows.slice(firstRow, endRow).map((row, index) => (
        <Row
          key={row.id}
          row={row}
          top={tops[firstRow + index] ?? 0}
          scale={scale}
          drawn={drawn}
          zone={zone}
          conflicts={conflicts}
        />
      ))}
      <line x1={place(nowAt)} x2={place(nowAt)} y1={top} y2={bottom} strokeWidth="2" className="stroke-accent" />
    </>
  );
});
