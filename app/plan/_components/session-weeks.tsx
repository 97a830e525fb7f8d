'use client';

import { useMemo, useState } from 'react';
import { isToCome } from '@/app/_plan/held-plan';
import type { PersonRow } from '@/app/_server/plan-view';
import { dayText } from '@/app/_ui/day-text';
import { Section } from '@/app/_ui/page';
import { countText } from '@/lib/batch/batch-words';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { durationText } from '@/lib/units/format-duration';
import { addDays, type CalendarDay, wallTimeAt, weekdayOf } from '@/lib/units/zoned-time';
import { SessionList } from './session-list';

export interface SessionWeeksProps {
  readonly visits: readonly PlannedVisit[];
  readonly people: readonly PersonRow[];
  readonly zone: string;
}

/** The plan as a table, week by week: the first one open, the others when they are asked for. */
export function SessionWeeks({ visits, people, zone }: SessionWeeksProps) {
  const weeks = useMemo(() => weeksOf(visits, zone), [visits, zone]);
  const names = new Map(people.map(({ id, name }) => [id, name]));
  if (weeks.length === 0) return null;
  return (
    <Section title="Session by session" lead="Everything that is planned, in order.">
      {weeks.map((week, index) => (
        <Week
          key={week.monday}
          week={week}
          isFirst={index === 0}
          nameOf={(id) => (id === null ? 'Nobody named' : (names.get(id) ?? 'Somebody who left'))}
          zone={zone}
        />
      ))}
    </Section>
  );
}

interface PlannedWeek {
  readonly monday: CalendarDay;
  readonly visits: readonly PlannedVisit[];
  readonly attendedMs: number;
}

function Week({
  week,
  isFirst,
  nameOf,
  zone,
}: {
  readonly week: PlannedWeek;
  readonly isFirst: boolean;
  readonly nameOf: (personId: string | null) => string;
  readonly zone: string;
}) {
  const [isOpen, setIsOpen] = useState(isFirst);
  const { monday, visits, attendedMs } = week;
  return (
    <details open={isOpen} onToggle={(event) => setIsOpen(event.currentTarget.open)} className="grid gap-3">
      <summary className="flex min-h-touch cursor-pointer flex-wrap items-center gap-x-4 border-b border-line">
        <strong>
          {dayText(monday)} to {dayText(addDays(monday, 6))}
        </strong>
        <span className="text-ink-soft">
          {countText(visits.length, 'visit')}, {durationText(attendedMs)}
        </span>
      </summary>
      {isOpen && (
        <div className="pt-4">
          <SessionList visits={visits} nameOf={nameOf} zone={zone} />
        </div>
      )}
    </details>
  );
}

/** What is still to come, by the weeks in which it is attended; what is put down over a Sunday stands in both. */
function weeksOf(visits: readonly PlannedVisit[], zone: string): readonly PlannedWeek[] {
  const weeks = new Map<CalendarDay, PlannedVisit[]>();
  for (const visit of visits.filter(isToCome)) {
    const own = new Map<CalendarDay, PlannedVisit['stretches']>();
    for (const stretch of visit.stretches) {
      const { day } = wallTimeAt(stretch.startAt, zone);
      const monday = addDays(day, 1 - weekdayOf(day));
      own.set(monday, [...(own.get(monday) ?? []), stretch]);
    }
    for (const [monday, stretches] of own) {
      weeks.set(monday, [...(weeks.get(monday) ?? []), { ...visit, stretches }]);
    }
  }
  return [...weeks]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([monday, own]) => ({
      monday,
      visits: own,
      attendedMs: own
        .flatMap(({ stretches }) => stretches)
        .reduce((sum, { startAt, endAt }) => sum + endAt - startAt, 0),
    }));
}
