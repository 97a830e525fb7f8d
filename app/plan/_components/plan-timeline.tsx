'use client';

import type { PointerEvent } from 'react';
import { useMemo, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { useWidth } from '@/app/_ui/use-width';
import { wallTicks } from '@/app/batches/_components/time-axis';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { clockText, weekdayClockText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { ROW_KINDS, type RowKind, type RowSource, type TimelineRow, timelineRows } from './timeline-rows';
import { panned, type Sight, SPANS_MS, snapped, zoomed } from './timeline-scale';
import { LANE_PX, VisitBar } from './visit-bar';

export interface PlanTimelineProps extends RowSource {
  readonly nowAt: Instant;
  readonly horizonAt: Instant;
  readonly zone: string;
  readonly conflictKeys: readonly string[];
  readonly onOpen: (visit: PlannedVisit) => void;
  readonly onDrop: (visit: PlannedVisit, startAt: Instant) => void;
}

const LEAST_WIDTH_PX = 200;
const AXIS_PX = 30;
const LABEL_PX = 20;
/** Marks closer together carry every other label. */
const TICK_PX = 64;
/** A press that moves less is a tap. */
const TAP_PX = 4;
const ROW_WORDS: { readonly [K in RowKind]: string } = { batches: 'Batches', people: 'People', places: 'Places' };
const FIRST_SPAN_MS = SPANS_MS[3] ?? 0;

type Drag =
  | { readonly kind: 'sight'; readonly fromX: number; readonly sight: Sight }
  | { readonly kind: 'visit'; readonly fromX: number; readonly visit: PlannedVisit; readonly startAt: Instant };

/** The plan over time, drawn here: only what is in view, so that eight weeks of it stay smooth. */
export function PlanTimeline(props: PlanTimelineProps) {
  const { nowAt, horizonAt, zone, conflictKeys, onOpen, onDrop } = props;
  const { visits, batches, people, places } = props;
  const [kind, setKind] = useState<RowKind>('batches');
  const least = Math.min(nowAt, ...visits.map((visit) => visit.startAt)) - FIRST_SPAN_MS / 28;
  const [sight, setSight] = useState<Sight>({ fromAt: nowAt - FIRST_SPAN_MS / 14, spanMs: FIRST_SPAN_MS });
  const [drag, setDrag] = useState<Drag | null>(null);
  const [frame, framePx] = useWidth<HTMLDivElement>(1_000);
  const width = Math.max(LEAST_WIDTH_PX, framePx);
  const rows = useMemo(
    () => timelineRows(kind, { visits, batches, people, places }),
    [kind, visits, batches, people, places],
  );
  const conflicts = useMemo(() => new Set(conflictKeys), [conflictKeys]);
  const msPerPx = sight.spanMs / width;
  const toAt = sight.fromAt + sight.spanMs;
  const place = (at: Instant) => (at - sight.fromAt) / msPerPx;
  const ticks = wallTicks({ fromAt: sight.fromAt, toAt }, zone);
  const tops = rowTops(rows);
  const height = (tops.at(-1) ?? AXIS_PX) + 4;

  function move(event: PointerEvent) {
    if (drag === null) return;
    const byMs = (event.clientX - drag.fromX) * msPerPx;
    if (drag.kind === 'sight') setSight(panned(drag.sight, -byMs, least, horizonAt));
    else
      setDrag({
        ...drag,
        startAt: Math.abs(byMs / msPerPx) < TAP_PX ? drag.visit.startAt : snapped(drag.visit.startAt + byMs),
      });
  }

  function release() {
    if (drag?.kind === 'visit') {
      if (drag.startAt === drag.visit.startAt) onOpen(drag.visit);
      else onDrop(drag.visit, drag.startAt);
    }
    setDrag(null);
  }

  return (
    <div className="grid gap-3">
      <div className="flex flex-wrap items-center gap-2">
        <fieldset className="flex flex-wrap gap-1">
          <legend className="sr-only">Rows</legend>
          {ROW_KINDS.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={one === kind}
              className={buttonClass(one === kind ? 'primary' : 'plain')}
              onClick={() => setKind(one)}
            >
              {ROW_WORDS[one]}
            </button>
          ))}
        </fieldset>
        <div className="ml-auto flex flex-wrap gap-1">
          <StepButton
            label="Earlier"
            text="←"
            onPress={() => setSight(panned(sight, -sight.spanMs / 2, least, horizonAt))}
          />
          <button
            type="button"
            className={buttonClass('plain')}
            onClick={() => setSight({ ...sight, fromAt: Math.max(least, nowAt - sight.spanMs / 14) })}
          >
            Now
          </button>
          <StepButton
            label="Later"
            text="→"
            onPress={() => setSight(panned(sight, sight.spanMs / 2, least, horizonAt))}
          />
          <StepButton label="Closer" text="+" onPress={() => setSight(zoomed(sight, -1, least, horizonAt))} />
          <StepButton label="Wider" text="−" onPress={() => setSight(zoomed(sight, 1, least, horizonAt))} />
        </div>
      </div>
      <div ref={frame} className="overflow-hidden rounded-sheet border border-line-strong bg-sheet">
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot hold a drawing's parts */}
        <svg
          width="100%"
          height={height}
          role="group"
          aria-label={`Plan over time, ${sight.spanMs / (SPANS_MS[0] ?? 1)} days in view`}
          className="block select-none"
          style={{ touchAction: 'pan-y' }}
          onPointerDown={(event) => {
            if (event.button === 0 && drag === null) setDrag({ kind: 'sight', fromX: event.clientX, sight });
          }}
          onPointerMove={move}
          onPointerUp={release}
          onPointerLeave={release}
        >
          {ticks.map(({ at, isDay }, index) => (
            <g key={at}>
              <line
                x1={place(at)}
                x2={place(at)}
                y1="20"
                y2={height}
                className={isDay ? 'stroke-line-strong' : 'stroke-line'}
              />
              {(index % 2 === 0 || width / ticks.length >= TICK_PX) && (
                <text x={place(at) + 3} y="14" className="fill-ink-soft text-xs">
                  {isDay ? dayMark(at, zone) : clockText(at, zone)}
                </text>
              )}
            </g>
          ))}
          {rows.map((row, index) => (
            <Row
              key={row.id}
              row={row}
              top={tops[index] ?? 0}
              place={place}
              fromAt={sight.fromAt}
              toAt={toAt}
              width={width}
              zone={zone}
              conflicts={conflicts}
              onOpen={onOpen}
              onGrab={(visit, event) => {
                event.stopPropagation();
                setDrag({ kind: 'visit', fromX: event.clientX, visit, startAt: visit.startAt });
              }}
            />
          ))}
          {nowAt >= sight.fromAt && nowAt <= toAt && (
            <line x1={place(nowAt)} x2={place(nowAt)} y1="18" y2={height} strokeWidth="2" className="stroke-accent" />
          )}
          {drag?.kind === 'visit' && drag.startAt !== drag.visit.startAt && (
            <g className="pointer-events-none">
              <line
                x1={place(drag.startAt)}
                x2={place(drag.startAt)}
                y1="0"
                y2={height}
                strokeDasharray="4 3"
                className="stroke-ink"
              />
              <text x={place(drag.startAt) + 4} y={height - 6} className="fill-ink text-sm font-bold">
                {weekdayClockText(drag.startAt, zone)}
              </text>
            </g>
          )}
        </svg>
      </div>
    </div>
  );
}

interface RowProps {
  readonly row: TimelineRow;
  readonly top: number;
  readonly place: (at: Instant) => number;
  readonly fromAt: Instant;
  readonly toAt: Instant;
  readonly width: number;
  readonly zone: string;
  readonly conflicts: ReadonlySet<string>;
  readonly onOpen: (visit: PlannedVisit) => void;
  readonly onGrab: (visit: PlannedVisit, event: PointerEvent<SVGGElement>) => void;
}

function Row({ row, top, place, fromAt, toAt, width, zone, conflicts, onOpen, onGrab }: RowProps) {
  const seen = row.bars.filter((bar) => bar.startAt < toAt && Math.max(bar.endAt, bar.visit.closesAt ?? 0) > fromAt);
  const sessions = row.sessions.filter(({ startAt, endAt }) => startAt < toAt && endAt > fromAt);
  const { dueAt, readyAt } = row;
  const isLate = dueAt !== null && readyAt !== null && readyAt > dueAt;
  return (
    <g transform={`translate(0 ${top})`}>
      <line x1="0" x2={width} y1="0" y2="0" className="stroke-line" />
      {sessions.map(({ startAt, endAt }) => (
        <rect
          key={startAt}
          x={place(startAt)}
          y={LABEL_PX - 2}
          width={Math.max(1, place(endAt) - place(startAt))}
          height={row.lanes * LANE_PX}
          className="fill-none stroke-line-strong"
          strokeDasharray="1 3"
        />
      ))}
      {seen.map((bar) => (
        <VisitBar
          key={bar.visit.key}
          bar={bar}
          place={place}
          y={LABEL_PX + bar.lane * LANE_PX}
          name={bar.visit.operationName}
          label={`Batch ${bar.visit.batchNumber}, ${bar.visit.operationName}, ${weekdayClockText(bar.startAt, zone)}`}
          isInConflict={conflicts.has(bar.visit.key)}
          hasWindow={row.dueAt !== null || row.readyAt !== null}
          onOpen={onOpen}
          onGrab={onGrab}
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
      <text
        x="5"
        y="14"
        className="pointer-events-none fill-ink text-xs font-semibold"
        style={{ paintOrder: 'stroke' }}
      >
        {row.label}
      </text>
    </g>
  );
}

function StepButton({
  label,
  text,
  onPress,
}: {
  readonly label: string;
  readonly text: string;
  readonly onPress: () => void;
}) {
  return (
    <button type="button" aria-label={label} className={buttonClass('plain')} onClick={onPress}>
      {text}
    </button>
  );
}

function rowTops(rows: readonly TimelineRow[]): readonly number[] {
  const tops = [AXIS_PX];
  for (const row of rows) tops.push((tops.at(-1) ?? AXIS_PX) + LABEL_PX + row.lanes * LANE_PX);
  return tops;
}

/** `Thu 12`: the weekday and the day of the month. */
function dayMark(at: Instant, zone: string): string {
  const day = new Intl.DateTimeFormat('en-GB', { timeZone: zone, weekday: 'short', day: 'numeric' });
  return day.format(at);
}
