import { dayText } from '@/app/_ui/day-text';
import { pieceText } from '@/lib/batch/batch-words';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { clockText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';

export interface SessionListProps {
  readonly visits: readonly PlannedVisit[];
  readonly nameOf: (personId: string | null) => string;
  readonly zone: string;
}

interface Stint {
  readonly key: string;
  readonly visit: PlannedVisit;
  readonly startAt: Instant;
  readonly endAt: Instant;
}

/** The plan as a table: day by day and person by person what is attended, in order. */
export function SessionList({ visits, nameOf, zone }: SessionListProps) {
  const days = new Map<string, Map<string, Stint[]>>();
  for (const visit of visits) {
    for (const [index, { startAt, endAt }] of visit.stretches.entries()) {
      const { day } = wallTimeAt(startAt, zone);
      const people = days.get(day) ?? new Map<string, Stint[]>();
      days.set(day, people);
      const name = nameOf(visit.personId);
      people.set(name, [...(people.get(name) ?? []), { key: `${visit.key} ${index}`, visit, startAt, endAt }]);
    }
  }
  return (
    <ol className="grid gap-6">
      {[...days]
        .toSorted(([a], [b]) => (a < b ? -1 : 1))
        .map(([day, people]) => (
          <li key={day} className="grid gap-3 break-inside-avoid">
            <h3 className="border-b border-line-strong font-bold">{dayText(day)}</h3>
            {[...people]
              .toSorted(([a], [b]) => a.localeCompare(b))
              .map(([name, stints]) => (
                <div key={name} className="grid gap-1 sm:grid-cols-[8rem_1fr]">
                  <h4 className="font-semibold">{name}</h4>
                  <ul className="grid gap-1">
                    {stints
                      .toSorted((a, b) => a.startAt - b.startAt)
                      .map((stint) => (
                        <li key={stint.key} className="grid grid-cols-[7.5rem_1fr] gap-3">
                          <span>
                            {clockText(stint.startAt, zone)}–{clockText(stint.endAt, zone)}
                          </span>
                          <span>{stintText(stint)}</span>
                        </li>
                      ))}
                  </ul>
                </div>
              ))}
          </li>
        ))}
    </ol>
  );
}

function stintText({ visit }: Stint): string {
  const material = visit.materialName === null ? '' : `, ${visit.materialName}`;
  const pinned = visit.state === 'pinned' ? ' (pinned)' : '';
  const remedy = visit.remedies.length === 0 ? '' : `; first: ${visit.remedies.join(', ')}`;
  return `Batch ${visit.batchNumber}: ${visit.operationName}, ${pieceText(visit.pieces)}${material}${remedy}${pinned}`;
}
