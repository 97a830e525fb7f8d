'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { FieldMark, QuantityField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { SelectField } from '@/app/_ui/select-field';
import { CRITERION_WORDS } from '@/app/stock/_components/words';
import type { PotLifeText } from './sheet-text';

const CRITERIA = Object.entries(CRITERION_WORDS).map(([value, label]) => ({ value, label }));

export interface PotLifeRowsProps {
  readonly points: readonly PotLifeText[];
  readonly massUnit: string;
  readonly temperatureUnit: string;
}

/** Pot lives as printed, one a row. */
export function PotLifeRows({ points, massUnit, temperatureUnit }: PotLifeRowsProps) {
  const list = useRows(points);
  return (
    <div className="grid gap-4">
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Pot life ${index + 1}`} isOrdered={false}>
          <div className="grid grid-cols-2 gap-4 lg:grid-cols-[1fr_1fr_1fr_2fr]">
            <QuantityField
              name={`potLife.${index}.minutes`}
              label="Pot life"
              unit="min"
              defaultValue={row.start.minutes}
            />
            <QuantityField
              name={`potLife.${index}.massG`}
              label="Mass in the cup"
              unit={massUnit}
              defaultValue={row.start.massG}
            />
            <QuantityField
              name={`potLife.${index}.temperatureC`}
              label="Temperature"
              unit={temperatureUnit}
              defaultValue={row.start.temperatureC}
            />
            <SelectField
              name={`potLife.${index}.criterion`}
              label="It ends when"
              options={CRITERIA}
              defaultValue={row.start.criterion}
            />
          </div>
        </RowFrame>
      ))}
      {list.rows.length === 0 && <p className="text-ink-soft">None: a one-part product.</p>}
      <FieldMark name="potLife" />
      <div>
        <button
          type="button"
          className={buttonClass('plain')}
          onClick={() => list.add({ minutes: '', massG: '', temperatureC: '', criterion: 'unknown' })}
        >
          Add a pot life
        </button>
      </div>
    </div>
  );
}
