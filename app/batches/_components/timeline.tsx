import { scaleUtc } from 'd3-scale';
import type { ReactNode } from 'react';
import type { BenchEntry } from '@/app/_server/bench';
import { pieceText } from '@/lib/batch/batch-words';
import type { BatchTimeline, MixSpan } from '@/lib/batch/timeline';
import type { TemperatureCourse } from '@/lib/cure/course';
import type { Instant } from '@/lib/units/instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { CureBar } from './cure-bar';
import { cureEnd, type MergedCure, mergedCures } from './merged-cures';
import { SpanBar } from './span-bar';
import { TemperatureStrip } from './temperature-strip';
import { TimeAxis } from './time-axis';
import type { Place, TimeRange } from './timeline-range';

export interface TimelineProps {
  readonly entry: BenchEntry;
  readonly timeline: BatchTimeline;
  readonly course: TemperatureCourse;
  readonly range: TimeRange;
  readonly nowAt: Instant;
  readonly zone: string;
  readonly unit: TemperatureUnit;
}

const ROW_PX = 50;
const STRIP_PX = 130;
const AXIS_PX = 46;

/**
 * A batch's mixes and cures over time, with the temperature they cured in under them on the same axis. Drawn by the
 * server in percent of the width, so that bars fit any screen and letters keep their size. The table after it says
 * the same in words.
 */
export function Timeline({ entry, timeline, course, range, nowAt, zone, unit }: TimelineProps) {
  const scale = scaleUtc().domain([range.fromAt, range.toAt]).range([0, 100]).clamp(true);
  const place: Place = (at) => scale(at);
  const isSeen = (fromAt: Instant, toAt: Instant | null) => fromAt < range.toAt && (toAt ?? range.toAt) > range.fromAt;
  const mixes = timeline.mixes.filter((mix) => isSeen(mix.mixedAt, mixEnd(mix)));
  const cures = mergedCures(timeline.cures).filter((cure) => isSeen(cure.firstSetAt, cureEnd(cure)));
  const rows = mixes.length + cures.length;
  const isNowSeen = nowAt >= range.fromAt && nowAt <= range.toAt;
  const height = AXIS_PX + rows * ROW_PX + STRIP_PX;
  return (
    <svg
      width="100%"
      height={height}
      role="img"
      aria-label="Mixes and cures over time, with the temperature"
      className="block overflow-hidden"
    >
      <TimeAxis range={range} place={place} zone={zone} height={height} />
      {mixes.map((mix, index) => (
        <Row key={mix.mixId} y={AXIS_PX + index * ROW_PX} label={`Mix ${mix.mixNumber}, ${mix.materialName}`}>
          <MixBar mix={mix} place={place} nowAt={nowAt} />
        </Row>
      ))}
      {cures.map((cure, index) => (
        <Row
          key={cure.last.clockId}
          y={AXIS_PX + (mixes.length + index) * ROW_PX}
          label={cureLabel(entry.words.operation(cure.last.operationId), cure)}
        >
          <CureBar cure={cure} place={place} range={range} />
        </Row>
      ))}
      <TemperatureStrip
        course={course}
        range={range}
        place={place}
        y={AXIS_PX + rows * ROW_PX}
        height={STRIP_PX}
        unit={unit}
        leastC={leastCureC(entry)}
      />
      {isNowSeen && (
        <g>
          <line
            x1={`${place(nowAt)}%`}
            x2={`${place(nowAt)}%`}
            y1={AXIS_PX - 10}
            y2={height}
            className="stroke-accent"
            strokeWidth="2"
          />
          <text
            x={`${place(nowAt)}%`}
            y={AXIS_PX - 14}
            dx={place(nowAt) > 90 ? -4 : 4}
            textAnchor={place(nowAt) > 90 ? 'end' : 'start'}
            className="fill-accent text-xs font-bold"
          >
            now
          </text>
        </g>
      )}
    </svg>
  );
}

/** A labelled line of the drawing. */
function Row({ y, label, children }: { readonly y: number; readonly label: string; readonly children: ReactNode }) {
  return (
    <g transform={`translate(0 ${y})`}>
      <text x="0" y="14" className="fill-ink text-xs font-semibold">
        {label}
      </text>
      {children}
    </g>
  );
}

/** From mixing to the lower end of the pot life in full, to the upper end in outline; a stroke where it was closed. */
function MixBar({ mix, place, nowAt }: { readonly mix: MixSpan; readonly place: Place; readonly nowAt: Instant }) {
  const { mixedAt, potLife, closedAt } = mix;
  const from = place(mixedAt);
  return (
    <>
      {potLife.ok && <SpanBar from={from} to={place(potLife.upperAt)} className="fill-none stroke-chart-b" />}
      <SpanBar from={from} to={place(potLife.ok ? potLife.lowerAt : (closedAt ?? nowAt))} className="fill-chart-b" />
      {closedAt !== null && (
        <line
          x1={`${place(closedAt)}%`}
          x2={`${place(closedAt)}%`}
          y1="17"
          y2="39"
          className="stroke-ink"
          strokeWidth="2"
        />
      )}
    </>
  );
}

function cureLabel(operation: string, { last, pieces, latePieces }: MergedCure): string {
  const late = latePieces.length === 0 ? '' : `; late: ${pieceText(latePieces)}`;
  return `${operation}, mix ${last.mixNumber}, ${pieceText(pieces)}${late}`;
}

function mixEnd({ closedAt, potLife }: MixSpan): Instant | null {
  return potLife.ok ? Math.max(potLife.upperAt, closedAt ?? 0) : closedAt;
}

/** The warmest of the temperatures below which a mix of the batch does not cure; null without one. */
function leastCureC({ batch }: BenchEntry): number | null {
  const least = batch.state.mixes.flatMap(({ sheet }) =>
    sheet.rateLaw.kind === 'plain-hours' ? [] : [sheet.minCureC],
  );
  return least.length === 0 ? null : Math.max(...least);
}
