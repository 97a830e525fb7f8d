import { milestoneText } from '@/lib/batch/describe-status';
import { cureEnd, type MergedCure } from './merged-cures';
import { SpanBar } from './span-bar';
import type { Place, TimeRange } from './timeline-range';

interface CureBarProps {
  readonly cure: MergedCure;
  readonly place: Place;
  readonly range: TimeRange;
}

/** Beyond this share of the width a word stands on the left of its mark. */
const EDGE = 82;

/** From setting to the last milestone; each milestone as its band and the hour from which it is allowed. */
export function CureBar({ cure, place, range }: CureBarProps) {
  const end = cureEnd(cure);
  const { recoatWindow, marks } = cure.last;
  const opensAt = recoatWindow?.opensAt ?? null;
  const closesAt = recoatWindow?.closesAt ?? null;
  return (
    <>
      <SpanBar from={place(cure.firstSetAt)} to={end === null ? 100 : place(end)} className="fill-chart-fill" />
      {opensAt !== null && closesAt !== null && opensAt < closesAt && (
        <rect
          x={`${place(opensAt)}%`}
          width={`${Math.max(place(closesAt) - place(opensAt), 0.4)}%`}
          y="37"
          height="4"
          className="fill-chart-b"
        />
      )}
      {placedMarks(marks, place, range).map((mark) => (
        <MilestoneMark key={mark.words} {...mark} />
      ))}
    </>
  );
}

/** A milestone as it is drawn; milestones of one hour are one mark with all their words. */
interface PlacedMark {
  readonly words: string;
  readonly from: number;
  readonly to: number;
  readonly isEndSeen: boolean;
}

/** Marks nearer than this, in percent of the width, cannot be told apart. */
const SAME_PLACE = 0.6;

function placedMarks(marks: MergedCure['last']['marks'], place: Place, range: TimeRange): readonly PlacedMark[] {
  const placed: PlacedMark[] = [];
  for (const mark of marks) {
    if (!mark.ok || mark.band.latestAt === null) continue;
    const { earliestAt, latestAt } = mark.band;
    if (latestAt <= range.fromAt || (earliestAt ?? 0) >= range.toAt) continue;
    placed.push({
      words: milestoneText(mark.milestone),
      from: place(earliestAt ?? latestAt),
      to: place(latestAt),
      isEndSeen: latestAt <= range.toAt,
    });
  }
  placed.sort((a, b) => a.to - b.to);
  const merged: PlacedMark[] = [];
  for (const mark of placed) {
    const last = merged.at(-1);
    if (last === undefined || mark.to - last.to > SAME_PLACE) merged.push(mark);
    else {
      const words = `${last.words}, ${mark.words}`;
      merged[merged.length - 1] = { ...mark, words, from: Math.min(last.from, mark.from) };
    }
  }
  return merged;
}

function MilestoneMark({ words, from, to, isEndSeen }: PlacedMark) {
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
            {words}
          </text>
        </>
      )}
    </g>
  );
}
