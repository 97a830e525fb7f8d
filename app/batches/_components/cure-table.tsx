import { sentence, setText as textOfSettings } from '@/app/_bench/bench-lists';
import { CureWhy } from '@/app/_bench/cure-why';
import type { BenchEntry } from '@/app/_server/bench';
import { pieceText } from '@/lib/batch/batch-words';
import { milestoneText, unjudgedText } from '@/lib/batch/describe-status';
import type { BatchTimeline } from '@/lib/batch/timeline';
import { MILESTONES, type Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { type MergedCure, mergedCures } from './merged-cures';

export interface CureTableProps {
  readonly entry: BenchEntry;
  readonly timeline: BatchTimeline;
  readonly unit: TemperatureUnit;
}

/** The drawing in words: every cure with its milestones, their hours and where each comes from. */
export function CureTable({ entry, timeline, unit }: CureTableProps) {
  if (timeline.cures.length === 0) return <p className="text-ink-soft">Nothing was set or applied yet.</p>;
  return (
    <div className="grid gap-6">
      {mergedCures(timeline.cures).map((cure) => (
        <CureCard key={cure.last.clockId} entry={entry} cure={cure} unit={unit} />
      ))}
    </div>
  );
}

interface CureCardProps {
  readonly entry: BenchEntry;
  readonly cure: MergedCure;
  readonly unit: TemperatureUnit;
}

function CureCard({ entry, cure, unit }: CureCardProps) {
  const { words, batch } = entry;
  const { last, pieces, latePieces, firstSetAt, lastSetAt } = cure;
  const clock = batch.state.clocks.find(({ id }) => id === last.clockId);
  if (clock === undefined) return null;
  const stated = MILESTONES.filter((milestone) => clock.sheet.milestoneHours[milestone] !== undefined);
  return (
    <section className="grid gap-2">
      <h3 className="font-bold">
        {words.operation(last.operationId)}, mix {last.mixNumber}: {pieceText(pieces)}
      </h3>
      <p className="-mt-1 text-sm text-ink-soft">
        {sentence(settingText(firstSetAt, lastSetAt, words.time))}
        {firstSetAt !== lastSetAt && '; the hours are those of the last'}.
        {latePieces.length > 0 && (
          <strong className="text-accent"> After the pot life: {pieceText(latePieces)}.</strong>
        )}
      </p>
      <ul>
        {stated.map((milestone) => {
          const release = batch.releases.release(clock, milestone);
          return (
            <li key={milestone} className="grid gap-x-4 border-b border-line sm:grid-cols-[8rem_1fr]">
              <span className="py-2.5 font-semibold">{milestoneName(milestone)}</span>
              <span className="py-2.5">
                {release.ok
                  ? hourText(milestone, release.band, words.time)
                  : sentence(`${unjudgedText(release.code)}.`)}
              </span>
            </li>
          );
        })}
      </ul>
      {stated.length > 0 && (
        <CureWhy
          about={`the hours of mix ${last.mixNumber}`}
          sheet={clock.sheet}
          milestones={stated}
          materialName={clock.materialName}
          mixedAt={clock.mixedAt}
          setText={settingText(firstSetAt, lastSetAt, words.time)}
          time={words.time}
          temperatureUnit={unit}
        />
      )}
    </section>
  );
}

function settingText(firstAt: Instant, lastAt: Instant, time: (at: Instant) => string): string {
  return textOfSettings([firstAt, lastAt], time);
}

function milestoneName(milestone: Milestone): string {
  if (milestone === 'recoat-from') return 'Recoat from';
  return milestone === 'recoat-by' ? 'Recoat before' : sentence(milestoneText(milestone));
}

interface Band {
  readonly earliestAt: Instant | null;
  readonly centralAt: Instant | null;
  readonly latestAt: Instant | null;
}

/** The hour that counts in front, the estimate behind it. */
function hourText(
  milestone: Milestone,
  { earliestAt, centralAt, latestAt }: Band,
  time: (at: Instant) => string,
): string {
  const sureAt = milestone === 'recoat-by' ? earliestAt : latestAt;
  if (sureAt === null) return 'not in sight at these temperatures';
  const about = centralAt === null ? '' : `about ${time(centralAt)}, `;
  const between = earliestAt === null || latestAt === null ? '' : `between ${time(earliestAt)} and ${time(latestAt)}`;
  const estimate = earliestAt === latestAt ? '' : ` (${about}${between})`;
  return `${milestone === 'recoat-by' ? 'until' : 'from'} ${time(sureAt)}${estimate}`;
}
