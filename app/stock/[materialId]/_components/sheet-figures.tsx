import { type Column, Table } from '@/app/_ui/table';
import { FIGURE_WORDS, figureSourceText } from '@/app/stock/_components/words';
import type { AdhesiveSheet, FigureName } from '@/lib/cure/adhesive-sheet';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import { durationText } from '@/lib/units/format-duration';
import { massText, temperatureText } from '@/lib/units/format-quantity';
import { HOUR_MS } from '@/lib/units/instant';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { rateLawText } from './rate-law-text';

interface FigureLine {
  readonly figure: FigureName | null;
  readonly title: string;
  readonly value: string;
}

export interface SheetFiguresProps {
  readonly sheet: AdhesiveSheet;
  readonly units: UnitChoice;
}

/** All figures of a sheet with where each comes from. */
export function SheetFigures({ sheet, units }: SheetFiguresProps) {
  const columns: Column<FigureLine>[] = [
    { id: 'figure', title: 'Figure', cell: (line) => line.title },
    { id: 'value', title: 'Value', cell: (line) => line.value },
    { id: 'source', title: 'Source', cell: (line) => sourceText(sheet, line.figure), isLong: true },
  ];
  return (
    <div className="grid gap-2">
      <h3 className="text-lg font-bold">All figures and their sources</h3>
      <Table caption="Figures and sources" columns={columns} rows={lines(sheet, units)} rowKey={(line) => line.title} />
    </div>
  );
}

function sourceText(sheet: AdhesiveSheet, figure: FigureName | null) {
  const source = figure === null ? undefined : sheet.sources[figure];
  if (source === undefined) return <span className="text-ink-soft">none given</span>;
  return <span className="text-sm">{figureSourceText(source)}</span>;
}

function lines(sheet: AdhesiveSheet, units: UnitChoice): FigureLine[] {
  const hours = (value: number) => durationText(value * HOUR_MS);
  const { ratio, densityA, densityB, maxMassG, recoatCapHours, recoatRemedy, massExponent } = sheet;
  const line = (figure: FigureName | null, title: string, value: string | null): FigureLine[] =>
    value === null ? [] : [{ figure, title, value }];
  const densities = [
    densityA === undefined ? '' : `A ${densityA} g/mL`,
    densityB === undefined ? '' : `B ${densityB} g/mL`,
  ].filter((text) => text !== '');
  return [
    ...line('rateLaw', FIGURE_WORDS.rateLaw, rateLawText(sheet.rateLaw, units)),
    ...line('minCureC', FIGURE_WORDS.minCureC, temperatureText(sheet.minCureC, units.temperatureUnit)),
    ...MILESTONES.flatMap((milestone) => {
      const value = sheet.milestoneHours[milestone];
      return line(milestone, FIGURE_WORDS[milestone], value === undefined ? null : hours(value));
    }),
    ...line(null, 'Recoat by, by the clock', recoatCapHours === undefined ? null : hours(recoatCapHours)),
    ...line(null, 'When the window has closed', recoatRemedy ?? null),
    ...line(
      'potLife',
      FIGURE_WORDS.potLife,
      sheet.potLife.length === 0 ? null : `${sheet.potLife.length} given, above`,
    ),
    ...line(
      'massExponent',
      FIGURE_WORDS.massExponent,
      massExponent === undefined ? null : `${massExponent.low} to ${massExponent.high}`,
    ),
    ...line(null, 'Largest cup', maxMassG === undefined ? null : massText(maxMassG, units.massUnit)),
    ...line(
      'ratio',
      FIGURE_WORDS.ratio,
      ratio === undefined ? null : `${ratio.partsA} A to ${ratio.partsB} B by ${ratio.basis}`,
    ),
    ...line('density', FIGURE_WORDS.density, densities.length === 0 ? null : densities.join(', ')),
  ];
}
