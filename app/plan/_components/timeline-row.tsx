'use client';

import { memo } from 'react';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { weekdayClockText } from '@/lib/units/format-instant';
import type { TimelineRow } from './timeline-rows';
import { type Drawn, placeOf, type Scale } from './timeline-scale';
import { LANE_PX, VisitBar } from './visit-bar';

/** Height of a row's name, px. */
export const LABEL_PX = 20;

export interface RowProps {
  readonly row: TimelineRow;
  readonly top: number;
  readonly scale: Scale;
  readonly drawn: Drawn;
  readonly zone: string;
  readonly conflicts: ReadonlySet<string>;
}

/** One row of the timeline, drawn anew only when other bars come into what is drawn. */
export const Row = memo(function Row({ row, top, scale, drawn, zone, conflicts }: RowProps) {
  const { fromAt, toAt } = drawn;
  const place = (at: number) => placeOf(at, scale);
  const seen = row.bars.filter((bar) => bar.startAt < toAt && Math.max(bar.endAt, bar.visit.closesAt ?? 0) > fromAt);
  const sessions = row.sessions.filter(({ startAt, endAt }) => startAt < toAt && endAt > fromAt);
  const { dueAt, readyAt } = row;
  const isLate = dueAt !== null && readyAt !== null && readyAt > dueAt;
  return (
    <g transform={`translate(0 ${top})`}>
      <line x1={place(fromAt)} x2={place(toAt)} y1="0" y2="0" className="stroke-line" />
      {sessions.map(({ startAt, endAt }) => (
        <rect
          key={startAt}
          x={place(startAt)}
          y={LABEL_PX - 3}
          width={Math.max(1, place(endAt) - place(startAt))}
          height={row.lanes * LANE_PX - 4}
          className="fill-none stroke-line-strong"
          strokeDasharray="1 3"
        />
      ))}
      {seen.map((bar) => (
        <VisitBar
          key={bar.visit.key}
          bar={bar}
          scale={scale}
          y={LABEL_PX + bar.lane * LANE_PX}
          label={labelOf(bar.visit, zone)}
          isInConflict={conflicts.has(bar.visit.key)}
          isInBatch={row.isBatch}
        />
      ))}
      {dueAt !== null && dueAt > fromAt && dueAt < toAt && (
        <g className={isLate ? 'stroke-accent fill-accent' : 'stroke-ink fill-ink'}>
          <line x1={place(dueAt)} x2={place(dueAt)} y1="2" y2={LABEL_PX + row.lanes * LANE_PX - 6} strokeWidth="2" />
          <text x={place(dueAt) - 4} y="14" textAnchor="end" strokeWidth="0" className="text-xs font-bold">
            {isLate ? 'due, late' : 'due'}
          </text>
        </g>
      )}
      {readyAt !== null && readyAt > fromAt && readyAt < toAt && (
        <path
          d={`M${place(readyAt)} ${LABEL_PX - 4}l6 8 -6 8 -6 -8z`}
          className="fill-sheet stroke-ink"
          strokeWidth="2"
        >
          <title>{`ready ${weekdayClockText(readyAt, zone)}`}</title>
        </path>
      )}
    </g>
  );
});

const labels = new WeakMap<PlannedVisit, string>();

/** A bar in words; the look-up of the wall clock is not made anew with every drawing. */
function labelOf(visit: PlannedVisit, zone: string): string {
  const known = labels.get(visit);
  if (known !== undefined) return known;
  const label = `Batch ${visit.batchNumber}, ${visit.operationName}, ${weekdayClockText(visit.startAt, zone)}`;
  labels.set(visit, label);
  return label;
}
