import type { Overload } from '@/app/_plan/overload';
import { Section } from '@/app/_ui/page';
import type { ImpossibleVisit, MovedVisit } from '@/lib/contracts/stored-plan';
import { durationText } from '@/lib/units/format-duration';
import { clockText, dateText } from '@/lib/units/format-instant';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';

/** Sentences that need a hand, marked as such. */
export function Warnings({ sentences, most = 12 }: { readonly sentences: readonly string[]; readonly most?: number }) {
  if (sentences.length === 0) return null;
  return (
    <ul className="grid gap-1 border-l-4 border-accent bg-accent-soft px-4 py-3">
      {sentences.slice(0, most).map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
      {sentences.length > most && <li>And {sentences.length - most} more.</li>}
    </ul>
  );
}

/** What cannot be planned or kept: each with its reason and what would lift it; what only waits for it is counted. */
export function ImpossibleList({
  title,
  visits,
}: {
  readonly title: string;
  readonly visits: readonly ImpossibleVisit[];
}) {
  const firsts = visits.filter(({ waitsForKey }) => waitsForKey === null);
  if (visits.length === 0) return null;
  const waiting = waitingCounts(visits);
  return (
    <Section title={title}>
      <ul className="grid gap-4 border-l-4 border-accent bg-accent-soft px-4 py-3">
        {firsts.slice(0, MOST_IMPOSSIBLE).map(({ key, label, reason, lifts }) => (
          <li key={key} className="grid gap-1">
            <span className="font-semibold">{label}</span>
            <span>{reason}</span>
            {lifts.length > 0 && (
              <ul className="list-disc pl-5">
                {lifts.map((lift) => (
                  <li key={lift}>{lift}</li>
                ))}
              </ul>
            )}
            <WaitingSteps count={waiting.get(key) ?? 0} />
          </li>
        ))}
        {firsts.length > MOST_IMPOSSIBLE && <li>And {firsts.length - MOST_IMPOSSIBLE} more.</li>}
      </ul>
    </Section>
  );
}

/** More are counted only. Chosen: what is read at once. */
const MOST_IMPOSSIBLE = 8;

function WaitingSteps({ count }: { readonly count: number }) {
  if (count === 0) return null;
  return (
    <span className="text-ink-soft">
      {count === 1 ? 'One step after it has no place either.' : `${count} steps after it have no place either.`}
    </span>
  );
}

/** How many visits wait, in a row or at once, for each that is first. */
function waitingCounts(visits: readonly ImpossibleVisit[]): ReadonlyMap<string, number> {
  const waitsFor = new Map(visits.map(({ key, waitsForKey }) => [key, waitsForKey]));
  const counts = new Map<string, number>();
  for (const { key, waitsForKey } of visits) {
    if (waitsForKey === null) continue;
    let first = waitsForKey;
    // Routes have no circles; the bound is for plans that were stored otherwise.
    for (let steps = 0; steps < visits.length; steps++) {
      const before = waitsFor.get(first) ?? null;
      if (before === null) break;
      first = before;
    }
    if (first !== key) counts.set(first, (counts.get(first) ?? 0) + 1);
  }
  return counts;
}

/** The fact behind an overload: minutes against minutes. */
export function OverloadFact({ overload, zone }: { readonly overload: Overload; readonly zone: string }) {
  const { dueAt, dueMinutes, benchMinutes } = overload;
  return (
    <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
      <strong>The bench is overloaded.</strong> What is due by {dateText(dueAt - 1, zone)} takes{' '}
      {durationText(dueMinutes * MINUTE_MS)} of work, and there are {durationText(benchMinutes * MINUTE_MS)} of bench
      hours before then. No order of work mends that: add hours, move a date, or leave a batch out.
    </p>
  );
}

/** Lines of a list that are shown at once; the rest is there to be opened. Chosen. */
const MOST_MOVED = 30;

/** What moved against the plan before, from when to when, and why. */
export function MovedList({ moved, zone }: { readonly moved: readonly MovedVisit[]; readonly zone: string }) {
  if (moved.length === 0) return <p className="text-ink-soft">Nothing moved.</p>;
  const rest = moved.slice(MOST_MOVED);
  return (
    <>
      <MovedLines moved={moved.slice(0, MOST_MOVED)} zone={zone} />
      {rest.length > 0 && (
        <details>
          <summary className="inline-flex min-h-touch items-center underline underline-offset-4">
            And {rest.length} more
          </summary>
          <MovedLines moved={rest} zone={zone} />
        </details>
      )}
    </>
  );
}

function MovedLines({ moved, zone }: { readonly moved: readonly MovedVisit[]; readonly zone: string }) {
  return (
    <ul className="grid gap-2">
      {moved.map(({ key, label, fromAt, toAt, cause }) => (
        <li key={key}>
          <span className="font-semibold">{label}</span>: {momentText(fromAt, zone)} → {momentText(toAt, zone)}
          <span className="text-ink-soft">; {cause}.</span>
        </li>
      ))}
    </ul>
  );
}

/** `Thu 12 Mar 19:40`: within eight weeks the year goes without saying. */
function momentText(at: Instant, zone: string): string {
  return `${dateText(at, zone).slice(0, -5)} ${clockText(at, zone)}`;
}
