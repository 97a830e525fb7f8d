import type { ReactNode } from 'react';
import { Estimate } from '@/app/_ui/estimate';
import { type Column, Table } from '@/app/_ui/table';
import { Why } from '@/app/_ui/why';
import { MILESTONE_WORDS, SOURCE_WORDS } from '@/app/stock/_components/words';
import { type AdhesiveSheet, MILESTONES, type Milestone } from '@/lib/cure/adhesive-sheet';
import { steadyHours } from '@/lib/cure/steady-hours';
import { durationText } from '@/lib/units/format-duration';
import { temperatureText } from '@/lib/units/format-quantity';
import { HOUR_MS } from '@/lib/units/instant';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { rateLawText } from './rate-law-text';

/** A cool night, a cool day and a warm day in a workshop, degC. Chosen. */
export const SHOWN_C = [15, 18, 22] as const;

export interface ReadyTableProps {
  readonly sheet: AdhesiveSheet;
  readonly units: UnitChoice;
}

/** How long each milestone takes where it stays 15, 18 or 22 degC. */
export function ReadyTable({ sheet, units }: ReadyTableProps) {
  const stated = MILESTONES.filter((milestone) => sheet.milestoneHours[milestone] !== undefined);
  const columns: Column<Milestone>[] = [
    { id: 'milestone', title: 'Milestone', cell: (milestone) => MILESTONE_WORDS[milestone] },
    {
      id: 'sheet',
      title: `On the sheet, at ${temperatureText(sheet.referenceC, units.temperatureUnit)}`,
      cell: (milestone) => <span className="whitespace-nowrap">{hoursText(sheet.milestoneHours[milestone] ?? 0)}</span>,
    },
    ...SHOWN_C.map((temperatureC) => ({
      id: String(temperatureC),
      title: `At ${temperatureText(temperatureC, units.temperatureUnit)}`,
      cell: (milestone: Milestone) => steadyText(sheet, milestone, temperatureC),
      isLong: true,
    })),
    {
      id: 'source',
      title: 'Source',
      cell: (milestone) => {
        const source = sheet.sources[milestone];
        return source === undefined ? 'none given' : SOURCE_WORDS[source.kind];
      },
    },
  ];
  const least = temperatureText(sheet.minCureC, units.temperatureUnit);
  return (
    <div className="grid gap-2">
      <h3 className="text-lg font-bold">Hours to each milestone</h3>
      <Table
        caption="Hours to each milestone at three temperatures"
        columns={columns}
        rows={stated}
        rowKey={(row) => row}
      />
      <Why
        about="these hours"
        formula="Hours on the sheet divided by the rate of cure at that temperature; the rate is 1 at the sheet’s temperature."
        inputs={[{ label: 'Rate', value: rateLawText(sheet.rateLaw, units) }]}
        source={sheet.sources.rateLaw?.text}
        assumption={`The temperature of the glue is that of the room and stays the same. Below ${least} nothing is counted as cured. A recoat window is never stretched by the cold.`}
        uncertainty="The two ends are the slowest and the fastest rate that are plausible. What is allowed counts on the slow one, what expires on the fast one."
      />
    </div>
  );
}

function steadyText(sheet: AdhesiveSheet, milestone: Milestone, temperatureC: number): ReactNode {
  const hours = steadyHours(sheet, milestone, temperatureC);
  if (hours === null) return '–';
  if (hours.central === null || hours.latest === null) return 'too cold to be sure of any cure';
  const about = hoursText(hours.central);
  const earliest = hoursText(hours.earliest);
  const latest = hoursText(hours.latest);
  if (earliest === latest) return <span className="whitespace-nowrap">{about}</span>;
  return <Estimate about={about} earliest={earliest} latest={latest} />;
}

/** Hours to plan by. */
function hoursText(hours: number): string {
  return durationText(hours * HOUR_MS);
}
