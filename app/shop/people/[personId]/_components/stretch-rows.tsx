'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { WeekdaysField } from '@/app/_ui/choice-field';
import { TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { timeInput } from '@/app/_ui/time-input';

interface Stretch {
  readonly weekdays: readonly number[];
  readonly fromMinute: number;
  readonly toMinute: number;
}

const WEEKDAY_EVENINGS: Stretch = { weekdays: [1, 2, 3, 4, 5], fromMinute: 18 * 60, toMinute: 21 * 60 };

/** Stretches of bench hours that can be added and removed. */
export function StretchRows({ stretches }: { readonly stretches: readonly Stretch[] }) {
  const list = useRows(stretches);
  return (
    <>
      {list.rows.length === 0 && (
        <p className="text-ink-soft">No hours yet: add the evenings or days on which glue-ups can happen.</p>
      )}
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Stretch ${index + 1}`} isOrdered={false}>
          <WeekdaysField name={`stretches.${index}.weekdays`} legend="Days" defaultDays={row.start.weekdays} />
          <div className="grid max-w-md grid-cols-2 gap-4">
            <TextField
              name={`stretches.${index}.from`}
              type="time"
              label="From"
              defaultValue={timeInput(row.start.fromMinute)}
            />
            <TextField
              name={`stretches.${index}.to`}
              type="time"
              label="To"
              defaultValue={timeInput(row.start.toMinute)}
            />
          </div>
        </RowFrame>
      ))}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={() => list.add(WEEKDAY_EVENINGS)}>
          Add a stretch
        </button>
      </div>
    </>
  );
}
