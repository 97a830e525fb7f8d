'use client';

import type { PersonRow } from '@/app/_server/plan-view';
import { weekdayClockText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { placeOf, type Scale } from './timeline-scale';
import type { DraggedVisit } from './use-timeline-touch';
import { BAR_PX, fillOf, LEAST_PX } from './visit-bar';

export interface DragGhostProps {
  readonly drag: DraggedVisit;
  readonly scale: Scale;
  readonly height: number;
  readonly people: readonly PersonRow[];
  readonly zone: string;
}

/** A bar on its way: where it would begin, and whether anybody is at the bench then. */
export function DragGhost({ drag, scale, height, people, zone }: DragGhostProps) {
  const { visit, startAt, y } = drag;
  const x = placeOf(startAt, scale);
  const width = Math.max(LEAST_PX, (visit.finishAt - visit.startAt) * scale.pxPerMs);
  const isAttended = someAttends(people, startAt, attendedMs(visit.stretches));
  const text = `${weekdayClockText(startAt, zone)}${isAttended ? '' : ', outside bench hours'}`;
  return (
    <g className="pointer-events-none">
      <path d={`M${x} 0V${height}`} strokeDasharray="4 3" className="stroke-ink" />
      <rect
        x={x}
        y={y}
        width={width}
        height={BAR_PX}
        rx="3"
        strokeWidth="3"
        className={`${fillOf(visit)} stroke-accent`}
      />
      <rect x={x + 3} y={y - 20} width={text.length * 7.4 + 10} height="18" rx="3" className="fill-ink" />
      <text x={x + 8} y={y - 7} className="fill-ink-inverse text-xs font-bold">
        {text}
      </text>
    </g>
  );
}

function attendedMs(stretches: readonly { readonly startAt: Instant; readonly endAt: Instant }[]): number {
  const [first] = stretches;
  return first === undefined ? 0 : first.endAt - first.startAt;
}

function someAttends(people: readonly PersonRow[], fromAt: Instant, ms: number): boolean {
  return people.some(({ sessions }) =>
    sessions.some(({ startAt, endAt }) => startAt <= fromAt && fromAt + ms <= endAt),
  );
}
