'use client';

import { memo } from 'react';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Bar } from './timeline-rows';
import { placeOf, type Scale } from './timeline-scale';

/** Height of a lane and of the bar within it, px: a bar is a target for a finger together with its lane. */
export const LANE_PX = 34;
export const BAR_PX = 24;
/** Less room than this carries no letters. */
const LABEL_PX = 44;
/** Never narrower than this, so that a short visit can be seen and met in eight weeks' view. */
export const LEAST_PX = 3;
/** A cure that is shorter than this in the drawing is left out beside its bar. */
const CURE_PX = 2;

export interface VisitBarProps {
  readonly bar: Bar;
  readonly scale: Scale;
  readonly label: string;
  readonly isInConflict: boolean;
  /** Whether its row is that of its batch: its recoat window is drawn, and its batch goes without saying. */
  readonly isInBatch: boolean;
  readonly y: number;
}

/**
 * A visit: what is attended as a bar by its kind, its cure as a hatched band after it with a mark where it is released,
 * its window as a bracket. Touches are heard by the drawing that it is in.
 */
export const VisitBar = memo(function VisitBar({ bar, scale, label, isInConflict, isInBatch, y }: VisitBarProps) {
  const { visit } = bar;
  const place = (at: number) => placeOf(at, scale);
  const x = place(bar.startAt);
  const width = Math.max(LEAST_PX, place(bar.finishAt) - x);
  const end = place(bar.endAt);
  const closes = visit.closesAt === null || !isInBatch ? null : place(visit.closesAt);
  // What may be put down is attended in several stretches, with a thread between them.
  const stints = visit.stretches.length > 1 ? visit.stretches : [{ startAt: bar.startAt, endAt: bar.finishAt }];
  const first = Math.max(LEAST_PX, place(stints[0]?.endAt ?? bar.finishAt) - x);
  const hasCure = end > x + width + CURE_PX;
  const canMove = visit.state === 'open' || visit.state === 'pinned';
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot be drawn inside a drawing
    <g
      role="button"
      tabIndex={0}
      aria-label={label}
      data-visit={visit.key}
      transform={`translate(${x} ${y})`}
      className={`${canMove ? 'cursor-grab' : 'cursor-pointer'} outline-none [&:focus-visible>rect]:stroke-accent [&:focus-visible>rect]:[stroke-width:3]`}
    >
      {hasCure && (
        <>
          <path
            d={`M${width} ${BAR_PX - 5}H${end - x}`}
            strokeWidth="8"
            strokeDasharray="2 4"
            className="stroke-chart-a"
          />
          <path d={`M${end - x} 8V${BAR_PX}`} strokeWidth="2" className="stroke-chart-a" />
        </>
      )}
      {closes !== null && (
        <path
          d={`M${Math.min(end, closes) - x} ${BAR_PX}V${BAR_PX + 4}H${closes - x}V${BAR_PX - 8}`}
          className="fill-none stroke-line-strong"
          strokeWidth="1.5"
        />
      )}
      {stints.length > 1 && <path d={`M0 ${BAR_PX / 2}H${width}`} strokeDasharray="1 4" className="stroke-ink" />}
      {stints.map(({ startAt, endAt }) => (
        <rect
          key={startAt}
          x={place(startAt) - x}
          y="0"
          width={Math.max(LEAST_PX, place(endAt) - place(startAt))}
          height={BAR_PX}
          rx="3"
          strokeWidth={isInConflict ? 3 : 1.5}
          strokeDasharray={visit.state === 'done' ? '3 2' : undefined}
          className={`${fillOf(visit)} ${isInConflict ? 'stroke-accent' : 'stroke-ink'}`}
        />
      ))}
      {visit.state === 'pinned' && <circle r="5" className="fill-ink stroke-sheet" />}
      {isInConflict && <path d={`M-1 ${BAR_PX}l6 -10 6 10z`} className="fill-accent stroke-sheet" />}
      <BarName
        visit={visit}
        name={isInBatch ? visit.operationName : `${visit.batchNumber} ${visit.operationName}`}
        inside={first}
        from={width}
        room={place(bar.nextAt) - x}
        hasCure={hasCure}
      />
    </g>
  );
});

interface BarNameProps {
  readonly visit: PlannedVisit;
  readonly name: string;
  /** Width of its first stretch, px. */
  readonly inside: number;
  /** Where its last one ends, px. */
  readonly from: number;
  /** Px from its beginning to the next bar. */
  readonly room: number;
  readonly hasCure: boolean;
}

/** The name of what is done: in the bar where it fits, else after it, over the cure. */
function BarName({ visit, name, inside, from, room, hasCure }: BarNameProps) {
  if (inside >= LABEL_PX) {
    return (
      <text x="7" y="16" className={`pointer-events-none text-xs font-semibold ${inkOf(visit)}`}>
        {fitted(name, inside)}
      </text>
    );
  }
  const after = Math.min(room, 400) - from;
  if (after < LABEL_PX) return null;
  return (
    <text x={from + 4} y={hasCure ? 11 : 16} className="pointer-events-none fill-ink text-xs">
      {fitted(name, after)}
    </text>
  );
}

/** Letters that fit, by the width of an average one. */
function fitted(name: string, width: number): string {
  const letters = Math.floor((width - 10) / 7);
  return name.length <= letters ? name : `${name.slice(0, Math.max(1, letters - 1))}…`;
}

export function fillOf({ kind, state }: Pick<PlannedVisit, 'kind' | 'state'>): string {
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
