'use client';

import type { PointerEvent } from 'react';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Bar } from './timeline-rows';

/** Height of a lane and of the bar within it, px: a bar is a target for a finger together with its lane. */
export const LANE_PX = 34;
const BAR_PX = 24;
/** Narrower bars carry no letters. */
const LABEL_PX = 44;
/** Never narrower than this, so that a short visit can be seen and met in eight weeks' view. */
const LEAST_PX = 3;

export interface VisitBarProps {
  readonly bar: Bar;
  readonly place: (at: number) => number;
  readonly name: string;
  readonly label: string;
  readonly isInConflict: boolean;
  /** Whether its recoat window is drawn. */
  readonly hasWindow: boolean;
  readonly y: number;
  readonly onOpen: (visit: PlannedVisit) => void;
  readonly onGrab: (visit: PlannedVisit, event: PointerEvent<SVGGElement>) => void;
}

/** A visit: what is attended as a bar by its kind, its cure as a hatched line after it, its window as a bracket. */
export function VisitBar({ bar, place, name, label, isInConflict, hasWindow, y, onOpen, onGrab }: VisitBarProps) {
  const { visit } = bar;
  const x = place(bar.startAt);
  const width = Math.max(LEAST_PX, place(bar.finishAt) - x);
  const end = place(bar.endAt);
  const closes = visit.closesAt === null || !hasWindow ? null : place(visit.closesAt);
  // What may be put down is attended in several stretches, with a thread between them.
  const stints = visit.stretches.length > 1 ? visit.stretches : [{ startAt: bar.startAt, endAt: bar.finishAt }];
  const labelled = Math.max(LEAST_PX, place(stints[0]?.endAt ?? bar.finishAt) - x);
  const canMove = visit.state === 'open' || visit.state === 'pinned';
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot be drawn inside a drawing
    <g
      role="button"
      tabIndex={0}
      aria-label={label}
      data-visit={visit.key}
      transform={`translate(0 ${y})`}
      className={`${canMove ? 'cursor-grab touch-none' : 'cursor-pointer'} outline-none [&:focus-visible>rect]:stroke-accent [&:focus-visible>rect]:[stroke-width:3]`}
      onPointerDown={(event) => (canMove ? onGrab(visit, event) : undefined)}
      onClick={() => (canMove ? undefined : onOpen(visit))}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onOpen(visit);
      }}
    >
      {end > x + width + 1 && (
        <line
          x1={x + width}
          x2={end}
          y1={BAR_PX / 2}
          y2={BAR_PX / 2}
          strokeWidth="7"
          strokeDasharray="2 3"
          className="stroke-chart-a"
        />
      )}
      {closes !== null && (
        <path
          d={`M${Math.min(end, closes)} ${BAR_PX / 2}V${BAR_PX + 3}H${closes}V${BAR_PX / 2}`}
          className="fill-none stroke-line-strong"
        />
      )}
      {stints.length > 1 && (
        <line x1={x} x2={x + width} y1={BAR_PX / 2} y2={BAR_PX / 2} strokeDasharray="1 4" className="stroke-ink" />
      )}
      {stints.map(({ startAt, endAt }) => (
        <rect
          key={startAt}
          x={place(startAt)}
          y="0"
          width={Math.max(LEAST_PX, place(endAt) - place(startAt))}
          height={BAR_PX}
          rx="3"
          strokeWidth={isInConflict ? 3 : 1.5}
          strokeDasharray={visit.state === 'done' ? '3 2' : undefined}
          className={`${fillOf(visit)} ${isInConflict ? 'stroke-accent' : 'stroke-ink'}`}
        />
      ))}
      {visit.state === 'pinned' && <circle cx={x} cy="0" r="5" className="fill-ink stroke-sheet" />}
      {isInConflict && <path d={`M${x - 1} ${BAR_PX}l6 -10 6 10z`} className="fill-accent stroke-sheet" />}
      {labelled >= LABEL_PX && (
        <text x={x + 7} y="16" className={`pointer-events-none text-xs font-semibold ${inkOf(visit)}`}>
          {fitted(name, labelled)}
        </text>
      )}
    </g>
  );
}

/** Letters that fit, by the width of an average one. */
function fitted(name: string, width: number): string {
  const letters = Math.floor((width - 10) / 7);
  return name.length <= letters ? name : `${name.slice(0, Math.max(1, letters - 1))}…`;
}

function fillOf({ kind, state }: PlannedVisit): string {
  if (state === 'done') return 'fill-sheet';
  switch (kind) {
    case 'work':
      return 'fill-well';
    case 'glue':
      return 'fill-chart-b';
    case 'coat':
      return 'fill-chart-a';
  }
}

function inkOf({ kind, state }: PlannedVisit): string {
  return kind === 'work' || state === 'done' ? 'fill-ink' : 'fill-ink-inverse';
}
