'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { WeekdaysField } from '@/app/_ui/choice-field';
import { QuantityField, TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { timeInput } from '@/app/_ui/time-input';

interface PeriodText {
  readonly weekdays: readonly number[];
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly temperature: string;
}

const NEW_PERIOD: PeriodText = {
  weekdays: [1, 2, 3, 4, 5, 6, 7],
  fromMinute: 8 * 60,
  toMinute: 20 * 60,
  temperature: '',
};

/** Periods of the week with a temperature of their own. Where two overlap, the lower row holds. */
export function PeriodRows({ periods, unit }: { readonly periods: readonly PeriodText[]; readonly unit: string }) {
  const list = useRows(periods);
  return (
    <div className="grid gap-4">
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Period ${index + 1}`}>
          <div className="grid items-start gap-4 lg:grid-cols-[auto_1fr_1fr_1fr]">
            <WeekdaysField name={`periods.${index}.weekdays`} legend="Begins on" defaultDays={row.start.weekdays} />
            <TextField
              name={`periods.${index}.from`}
              type="time"
              label="From"
              defaultValue={timeInput(row.start.fromMinute)}
            />
            <TextField
              name={`periods.${index}.to`}
              type="time"
              label="To"
              defaultValue={timeInput(row.start.toMinute)}
            />
            <QuantityField
              name={`periods.${index}.temperatureC`}
              label="Temperature"
              unit={unit}
              defaultValue={row.start.temperature}
            />
          </div>
        </RowFrame>
      ))}
      {list.rows.length > 1 && <p className="text-sm text-ink-soft">Where two overlap, the lower one holds.</p>}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={() => list.add(NEW_PERIOD)}>
          Add a period
        </button>
      </div>
    </div>
  );
}
