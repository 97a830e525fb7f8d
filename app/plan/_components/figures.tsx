import type { Timetable } from '@/lib/contracts/stored-plan';

/** Weighted minutes late as weighted days, to a tenth: `31.7`. */
function daysText(minutes: number): string {
  return (minutes / 1440).toFixed(1);
}

/** The three figures of a plan: what it costs, what cannot be avoided, what a better one could still save at most. */
export function Figures({ timetable }: { readonly timetable: Timetable }) {
  const { value, unavoidableLateMinutes, isProvedBest } = timetable;
  const late = value.weightedLateMinutes;
  const least = unavoidableLateMinutes === null ? null : Math.min(unavoidableLateMinutes, late);
  return (
    <div className="grid gap-3">
      <dl className="grid gap-3 sm:grid-cols-3">
        <Figure term="This plan is late by" value={daysText(late)} />
        <Figure term="Proven unavoidable" value={least === null ? 'not computed' : daysText(least)} />
        <Figure
          term="A better plan could save at most"
          value={least === null ? daysText(late) : daysText(late - least)}
        />
      </dl>
      <p className="text-sm text-ink-soft">
        In days times the weight of their batches. {evenings(value.sessions)}, {value.setUps} set-ups,{' '}
        {value.closedWindows === 0
          ? 'every recoat window met'
          : `${value.closedWindows} recoat windows missed and sanded`}
        .{isProvedBest && ' No better plan exists: proved.'}
        {!isProvedBest && late > 0 && ' The proof is weak where the bench is overloaded; a better plan may not exist.'}
      </p>
    </div>
  );
}

function evenings(count: number): string {
  return count === 1 ? '1 session at the bench' : `${count} sessions at the bench`;
}

function Figure({ term, value }: { readonly term: string; readonly value: string }) {
  return (
    <div className="rounded-sheet border border-line bg-sheet p-4">
      <dt className="text-sm text-ink-soft">{term}</dt>
      <dd className="text-3xl font-bold">{value}</dd>
    </div>
  );
}
