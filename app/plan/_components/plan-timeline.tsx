'use client';

import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { useWidth } from '@/app/_ui/use-width';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { DragGhost } from './drag-ghost';
import { TimelineBody } from './timeline-body';
import { TimelineControls } from './timeline-controls';
import { HEAD_PX, TimelineHead } from './timeline-head';
import { TimelineLegend } from './timeline-legend';
import { LABEL_PX } from './timeline-row';
import { type RowKind, type RowSource, timelineRows } from './timeline-rows';
import { drawnAround, panned, placeOf, type Scale, type Sight, SPANS_MS, zoomed } from './timeline-scale';
import { benchSessionsOf } from './timeline-sessions';
import { timelineTicks } from './timeline-ticks';
import { useRowsInView } from './use-rows-in-view';
import { useTimelineTouch } from './use-timeline-touch';
import { useTimelineWheel } from './use-timeline-wheel';
import { LANE_PX } from './visit-bar';

export interface PlanTimelineProps extends RowSource {
  readonly nowAt: Instant;
  readonly horizonAt: Instant;
  readonly zone: string;
  readonly conflicts: ReadonlySet<string>;
  readonly onOpen: (visit: PlannedVisit) => void;
  readonly onDrop: (visit: PlannedVisit, startAt: Instant) => void;
}

const LEAST_WIDTH_PX = 200;
/** On a phone two days are in view at first, else a week. */
const PHONE_PX = 640;
const [DAY_MS = 0, TWO_DAYS_MS = 0, , WEEK_MS = 0] = SPANS_MS;

/**
 * The plan over time, drawn here. Only what is in view is drawn, and a half more to either side: moving it moves a
 * layer, dragging a bar moves that bar alone, and eight weeks of a thousand bars stay smooth.
 */
export function PlanTimeline(props: PlanTimelineProps) {
  const { nowAt, horizonAt, zone, conflicts, onOpen, onDrop } = props;
  const { visits, batches, people, places } = props;
  const [kind, setKind] = useState<RowKind>('batches');
  const [sight, setSight] = useState<Sight>(() => firstSight(nowAt));
  const [frame, framePx] = useWidth<HTMLDivElement>(1_000);
  const scroller = useRef<HTMLDivElement>(null);
  const width = Math.max(LEAST_WIDTH_PX, framePx);
  const originAt = useMemo(
    () => Math.min(nowAt, ...visits.map(({ startAt }) => startAt)) - DAY_MS / 4,
    [nowAt, visits],
  );
  const rows = useMemo(
    () => timelineRows(kind, { visits, batches, people, places }),
    [kind, visits, batches, people, places],
  );
  const tops = useMemo(() => rowTops(rows), [rows]);
  const sessions = useMemo(() => benchSessionsOf(people, visits), [people, visits]);
  const pxPerMs = width / sight.spanMs;
  const scale = useMemo((): Scale => ({ originAt, pxPerMs }), [originAt, pxPerMs]);
  const { fromAt, toAt } = drawnAround(sight, originAt);
  const drawn = useMemo(() => ({ fromAt, toAt }), [fromAt, toAt]);
  const ticks = useMemo(() => timelineTicks(drawn, pxPerMs, zone), [drawn, pxPerMs, zone]);
  const inView = useRowsInView(scroller, tops);
  const pan = (ms: number) => setSight((before) => panned(before, ms, originAt, horizonAt));
  const zoom = (by: 1 | -1) => setSight((before) => zoomed(before, by, originAt, horizonAt));
  useTimelineWheel(scroller, { onPan: (px) => pan(px / pxPerMs), onZoom: zoom });
  const { drag, handlers } = useTimelineTouch({ rows, tops, pxPerMs, onPan: pan, onOpen, onDrop });

  const shown = { width: placeOf(toAt, scale) - placeOf(fromAt, scale), x: placeOf(fromAt, scale) };
  const layer = {
    width: shown.width,
    transform: `translateX(${shown.x - placeOf(sight.fromAt, scale)}px)`,
    willChange: 'transform',
  };
  const height = (tops.at(-1) ?? 0) + 4;
  return (
    <div className="grid gap-3">
      <TimelineControls
        kind={kind}
        onKind={setKind}
        onPan={(part) => pan(part * sight.spanMs)}
        onNow={() =>
          setSight((before) => panned({ ...before, fromAt: nowAt - before.spanMs / 14 }, 0, originAt, horizonAt))
        }
        onZoom={zoom}
      />
      <div ref={frame} className="overflow-hidden rounded-sheet border border-line-strong bg-sheet">
        <div
          ref={scroller}
          className="relative max-h-[min(75dvh,48rem)] overflow-x-hidden overflow-y-auto overscroll-x-contain select-none"
        >
          <div className="sticky top-0 z-10 overflow-hidden border-b border-line bg-sheet" style={{ height: HEAD_PX }}>
            <div className="absolute inset-y-0 left-0" style={layer}>
              <svg width={shown.width} height={HEAD_PX} aria-hidden="true">
                <g transform={`translate(${-shown.x} 0)`}>
                  <TimelineHead sessions={sessions} ticks={ticks} drawn={drawn} scale={scale} />
                </g>
              </svg>
            </div>
          </div>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: what is pressed are the bars in it, which are buttons */}
          <div
            className="relative overflow-hidden touch-pan-y"
            style={{ height }}
            {...handlers}
            onKeyDown={(event) => openByKey(event, visits, onOpen)}
          >
            <div className="absolute inset-y-0 left-0" style={layer}>
              {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot hold a drawing's parts */}
              <svg
                width={shown.width}
                height={height}
                role="group"
                aria-label={`Plan over time, ${sight.spanMs / DAY_MS} days in view`}
                className="block"
              >
                <g transform={`translate(${-shown.x} 0)`}>
                  <TimelineBody
                    rows={rows}
                    tops={tops}
                    firstRow={inView.first}
                    endRow={inView.end}
                    sessions={kind === 'people' ? NO_SESSIONS : sessions}
                    ticks={ticks}
                    drawn={drawn}
                    scale={scale}
                    zone={zone}
                    nowAt={nowAt}
                    conflicts={conflicts}
                  />
                  {drag !== null && <DragGhost drag={drag} scale={scale} height={height} people={people} zone={zone} />}
                </g>
              </svg>
            </div>
            {rows.slice(inView.first, inView.end).map((row, index) => (
              <p
                key={row.id}
                className="pointer-events-none absolute left-0 max-w-full truncate rounded-r-sm bg-sheet pr-2 pl-1.5 text-xs leading-4 font-semibold"
                style={{ top: (tops[inView.first + index] ?? 0) + 2 }}
              >
                {row.label}
              </p>
            ))}
          </div>
        </div>
      </div>
      <TimelineLegend kind={kind} />
    </div>
  );
}

const NO_SESSIONS = [] as const;

function firstSight(nowAt: Instant): Sight {
  const spanMs = window.innerWidth < PHONE_PX ? TWO_DAYS_MS : WEEK_MS;
  return { fromAt: nowAt - spanMs / 14, spanMs };
}

/** Upper edges of the rows, and the lower one of the last. */
function rowTops(rows: readonly { readonly lanes: number }[]): readonly number[] {
  const tops = [0];
  for (const row of rows) tops.push((tops.at(-1) ?? 0) + LABEL_PX + row.lanes * LANE_PX);
  return tops;
}

function openByKey(event: KeyboardEvent, visits: readonly PlannedVisit[], onOpen: (visit: PlannedVisit) => void): void {
  if (event.key !== 'Enter' && event.key !== ' ') return;
  const key = event.target instanceof Element ? event.target.getAttribute('data-visit') : null;
  const visit = visits.find((one) => one.key === key);
  if (visit === undefined) return;
  event.preventDefault();
  onOpen(visit);
}
