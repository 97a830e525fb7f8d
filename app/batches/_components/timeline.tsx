import { scaleUtc } from 'd3-scale';
import type { ReactNode } from 'react';
import type { BenchEntry } from '@/app/_server/bench';
import { pieceText } from '@/lib/batch/batch-words';
import { milestoneText } from '@/lib/batch/describe-status';
import type { BatchTimeline, MixSpan } from '@/lib/batch/timeline';
import type { TemperatureCourse } from '@/lib/cure/course';
import type { Instant } from '@/lib/units/instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { type MergedCure, mergedCures } from './merged-cures';
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
const AXIS_PX = 30;

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
            y1={AXIS_PX - 6}
            y2={height}
            className="stroke-accent"
            strokeWidth="2"
          />
          <text
            x={`${place(nowAt)}%`}
            y={AXIS_PX - 10}
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

interface BarProps {
  readonly from: number;
  readonly to: number;
  readonly className: string;
}

function Bar({ from, to, className }: BarProps) {
  return <rect x={`${from}%`} width={`${Math.max(to - from, 0.4)}%`} y="20" height="16" rx="2" className={className} />;
}

/** From mixing to the lower end of the pot life in full, to the upper end in outline; a stroke where it was closed. */
function MixBar({ mix, place, nowAt }: { readonly mix: MixSpan; readonly place: Place; readonly nowAt: Instant }) {
  const { mixedAt, potLife, closedAt } = mix;
  const from = place(mixedAt);
  return (
    <>
      {potLife.ok && <Bar from={from} to={place(potLife.upperAt)} className="fill-none stroke-chart-b" />}
      <Bar from={from} to={place(potLife.ok ? potLife.lowerAt : (closedAt ?? nowAt))} className="fill-chart-b" />
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

interface CureBarProps {
  readonly cure: MergedCure;
  readonly place: Place;
  readonly range: TimeRange;
}

/** Beyond this share of the width a word stands on the left of its mark. */
const EDGE = 82;

/** From setting to the last milestone; each milestone as its band and the hour from which it is allowed. */
function CureBar({ cure, place, range }: CureBarProps) {
  const end = cureEnd(cure);
  const { recoatWindow, marks } = cure.last;
  const opensAt = recoatWindow?.opensAt ?? null;
  const closesAt = recoatWindow?.closesAt ?? null;
  return (
    <>
      <Bar from={place(cure.firstSetAt)} to={end === null ? 100 : place(end)} className="fill-chart-fill" />
      {opensAt !== null && closesAt !== null && opensAt < closesAt && (
        <rect
          x={`${place(opensAt)}%`}
          width={`${Math.max(place(closesAt) - place(opensAt), 0.4)}%`}
          y="37"
          height="4"
          className="fill-chart-b"
        />
      )}
      {marks.map((mark) =>
        mark.ok &&
        mark.band.latestAt !== null &&
        mark.band.latestAt > range.fromAt &&
        (mark.band.earliestAt ?? 0) < range.toAt ? (
          <MilestoneMark
            key={mark.milestone}
            word={milestoneText(mark.milestone)}
            from={place(mark.band.earliestAt ?? mark.band.latestAt)}
            to={place(mark.band.latestAt)}
            isEndSeen={mark.band.latestAt <= range.toAt}
          />
        ) : null,
      )}
    </>
  );
}

interface MilestoneMarkProps {
  readonly word: string;
  readonly from: number;
  readonly to: number;
  readonly isEndSeen: boolean;
}

function MilestoneMark({ word, from, to, isEndSeen }: MilestoneMarkProps) {
  return (
    <g>
      <line
        x1={`${from}%`}
        x2={`${to}%`}
        y1="28"
        y2="28"
        className="stroke-chart-a"
        strokeWidth="3"
        strokeOpacity="0.45"
      />
      {isEndSeen && (
        <>
          <line x1={`${to}%`} x2={`${to}%`} y1="18" y2="38" className="stroke-chart-a" strokeWidth="3" />
          <text
            x={`${to}%`}
            dx={to > EDGE ? -5 : 5}
            y="32"
            textAnchor={to > EDGE ? 'end' : 'start'}
            className="fill-ink text-[0.6875rem] max-sm:hidden"
          >
            {word}
          </text>
        </>
      )}
    </g>
  );
}

function mixEnd({ closedAt, potLife }: MixSpan): Instant | null {
  return potLife.ok ? Math.max(potLife.upperAt, closedAt ?? 0) : closedAt;
}

/** The last milestone that can be told; null when one lies beyond what can be told. */
function cureEnd({ lastSetAt, last }: MergedCure): Instant | null {
  let end: Instant | null = lastSetAt;
  for (const mark of last.marks) {
    if (!mark.ok) continue;
    end = mark.band.latestAt === null || end === null ? null : Math.max(end, mark.band.latestAt);
  }
  return end;
}

/** The warmest of the temperatures below which a mix of the batch does not cure; null without one. */
function leastCureC({ batch }: BenchEntry): number | null {
  const least = batch.state.mixes.flatMap(({ sheet }) =>
    sheet.rateLaw.kind === 'plain-hours' ? [] : [sheet.minCureC],
  );
  return least.length === 0 ? null : Math.max(...least);
}
