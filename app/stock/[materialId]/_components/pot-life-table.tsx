import { type Column, Table } from '@/app/_ui/table';
import { Why } from '@/app/_ui/why';
import { CRITERION_WORDS } from '@/app/stock/_components/words';
import type { AdhesiveSheet, PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { potLife } from '@/lib/cure/pot-life';
import { durationText } from '@/lib/units/format-duration';
import { massText, temperatureText } from '@/lib/units/format-quantity';
import { MINUTE_MS } from '@/lib/units/instant';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { SHOWN_C } from './ready-table';

/** A dab, a small cup and a full cup, g. Chosen. */
const SHOWN_G = [5, 20, 60] as const;

export interface PotLifeTableProps {
  readonly sheet: AdhesiveSheet;
  readonly units: UnitChoice;
}

/** Pot lives as printed, and what they become for cups and temperatures of a workshop. */
export function PotLifeTable({ sheet, units }: PotLifeTableProps) {
  if (sheet.potLife.length === 0) {
    return <p className="text-ink-soft">No pot life: a one-part product, or a figure still to be entered.</p>;
  }
  const printed: Column<PotLifePoint>[] = [
    { id: 'minutes', title: 'Pot life', cell: (point) => minutesText(point.minutes) },
    { id: 'mass', title: 'Mass in the cup', cell: (point) => massText(point.massG, units.massUnit) },
    { id: 'c', title: 'Temperature', cell: (point) => temperatureText(point.temperatureC, units.temperatureUnit) },
    { id: 'end', title: 'Ends when', cell: (point) => CRITERION_WORDS[point.criterion] },
  ];
  const derived: Column<number>[] = [
    {
      id: 'mass',
      title: 'Cup',
      cell: (massG) => <span className="whitespace-nowrap">{massText(massG, units.massUnit)}</span>,
    },
    ...SHOWN_C.map((temperatureC) => ({
      id: String(temperatureC),
      title: `At ${temperatureText(temperatureC, units.temperatureUnit)}`,
      cell: (massG: number) => potLifeText(sheet, massG, temperatureC),
      isLong: true,
    })),
  ];
  return (
    <div className="grid gap-4">
      <h3 className="text-lg font-bold">Pot life</h3>
      <Table
        caption="Pot lives as printed on the sheet"
        columns={printed}
        rows={sheet.potLife}
        rowKey={(point) => `${point.massG} ${point.temperatureC} ${point.criterion}`}
      />
      <Table
        caption="Pot life of three cups at three temperatures"
        columns={derived}
        rows={SHOWN_G}
        rowKey={(massG) => String(massG)}
      />
      <Why
        about="these pot lives"
        formula="Pot life on the sheet, times (mass on the sheet / mass in the cup) to the power b, divided by the rate at that temperature over the rate at the sheet’s."
        inputs={[
          {
            label: 'b',
            value:
              sheet.massExponent === undefined
                ? 'from the sheet’s own masses where it gives several, else 0.2, between 0.05 and 0.4'
                : `${sheet.massExponent.central}, between ${sheet.massExponent.low} and ${sheet.massExponent.high}`,
          },
        ]}
        source={sheet.sources.potLife?.text}
        assumption="The parts are as warm as the room. A countdown runs to the shortest time that is plausible."
        uncertainty="Wide on purpose: a cup warms itself, and no two cups are alike. Trust your stick over the clock."
      />
    </div>
  );
}

function potLifeText(sheet: AdhesiveSheet, massG: number, temperatureC: number): string {
  const life = potLife(sheet, massG, temperatureC);
  if (!life.ok) return life.code === 'no-pot-life' ? '–' : 'the points of the sheet contradict each other';
  const text = `${minutesText(life.lowerMinutes)}, at most ${minutesText(life.upperMinutes)}`;
  return life.isExtrapolated ? `${text} (far from the sheet)` : text;
}

function minutesText(minutes: number): string {
  return durationText(minutes * MINUTE_MS);
}
