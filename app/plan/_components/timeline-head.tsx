'use client';

import { memo } from 'react';
import { durationText } from '@/lib/units/format-duration';
import { type Drawn, placeOf, type Scale } from './timeline-scale';
import type { BenchSession } from './timeline-sessions';
import type { Tick } from './timeline-ticks';

const AXIS_PX = 22;
const STRIP_PX = 26;
export const HEAD_PX = AXIS_PX + STRIP_PX + 6;
/** Narrower sessions tell their minutes by their filling alone. */
const LABEL_PX = 96;

export interface TimelineHeadProps {
  readonly sessions: readonly BenchSession[];
  readonly ticks: readonly Tick[];
  readonly drawn: Drawn;
  readonly scale: Scale;
}

/** Days and hours, and under them the sessions: how long the bench is attended, and how much of it is planned. */
export const TimelineHead = memo(function TimelineHead({ sessions, ticks, drawn, scale }: TimelineHeadProps) {
  return (
    <g>
      {ticks.map(({ at, isStrong, text }) => (
        <g key={at}>
          <line
            x1={placeOf(at, scale)}
            x2={placeOf(at, scale)}
            y1={isStrong ? 4 : 18}
            y2={HEAD_PX}
            className={isStrong ? 'stroke-line-strong' : 'stroke-line'}
          />
          {text !== null && (
            <text x={placeOf(at, scale) + 4} y="14" className="fill-ink-soft text-xs">
              {text}
            </text>
          )}
        </g>
      ))}
      {sessions
        .filter(({ startAt, endAt }) => startAt < drawn.toAt && endAt > drawn.fromAt)
        .map((session) => (
          <Session key={session.startAt} session={session} scale={scale} />
        ))}
    </g>
  );
});

function Session({ session, scale }: { readonly session: BenchSession; readonly scale: Scale }) {
  const { startAt, endAt, benchMs, plannedMs } = session;
  const x = placeOf(startAt, scale);
  const width = Math.max(2, placeOf(endAt, scale) - x);
  const filled = Math.min(1, plannedMs / benchMs) * STRIP_PX;
  const text = `${durationText(plannedMs)} of ${durationText(benchMs)}`;
  return (
    <g transform={`translate(${x} ${AXIS_PX})`}>
      <rect width={width} height={STRIP_PX} className="fill-sheet" />
      <rect y={STRIP_PX - filled} width={width} height={filled} className="fill-chart-fill" />
      <rect width={width} height={STRIP_PX} className="fill-none stroke-line-strong" />
      {width >= LABEL_PX && (
        <text x="6" y="17" className="fill-ink text-xs">
          {text}
        </text>
      )}
      <title>{`planned ${text}`}</title>
    </g>
  );
}
