import { dayText } from '@/app/_ui/day-text';
import { Table } from '@/app/_ui/table';
import { durationText } from '@/lib/units/format-duration';
import { temperatureText } from '@/lib/units/format-quantity';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import type { PlotDay } from './plot-days';

/** The plot in numbers, newest day first. */
export function DayTable({ days, unit }: { readonly days: readonly PlotDay[]; readonly unit: TemperatureUnit }) {
  const temperature = (value: number | null) => (value === null ? '–' : temperatureText(value, unit));
  return (
    <details>
      <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
        Day by day in numbers
      </summary>
      <Table
        caption="Temperatures of the last two weeks, day by day"
        rows={days.toReversed()}
        rowKey={(day) => day.day}
        columns={[
          { id: 'day', title: 'Day', cell: (day) => dayText(day.day) },
          { id: 'lowest', title: 'Lowest', cell: (day) => temperature(day.lowestC), isNumber: true },
          { id: 'highest', title: 'Highest', cell: (day) => temperature(day.highestC), isNumber: true },
          { id: 'count', title: 'Readings', cell: (day) => day.count.toLocaleString('en'), isNumber: true },
          {
            id: 'gap',
            title: 'Without readings',
            cell: (day) => (day.gapMs === 0 ? '–' : durationText(day.gapMs)),
            isNumber: true,
          },
        ]}
      />
    </details>
  );
}
