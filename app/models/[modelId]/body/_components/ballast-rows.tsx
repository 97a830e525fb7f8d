'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { CheckField } from '@/app/_ui/choice-field';
import { QuantityField, TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { SelectField } from '@/app/_ui/select-field';
import { METAL_WORDS } from '@/app/models/_components/words';

/** A weight as the form's text. */
export interface BallastText {
  readonly name: string;
  readonly metal: string;
  readonly massG: string;
  readonly xMm: string;
  readonly zMm: string;
  readonly place: string;
}

export interface BallastRowsProps {
  readonly items: readonly BallastText[];
  readonly hasNone: boolean;
  readonly lengthSign: string;
  readonly massSign: string;
}

const METALS = Object.entries(METAL_WORDS).map(([value, label]) => ({ value, label }));
const PLACES = [
  { value: 'inside', label: 'in a hole of the body' },
  { value: 'outside', label: 'outside, in the water' },
];
const NEW: BallastText = { name: '', metal: 'lead', massG: '', xMm: '', zMm: '0', place: 'inside' };

/** The weights of a body as rows; or that there are none. */
export function BallastRows({ items, hasNone, lengthSign, massSign }: BallastRowsProps) {
  const list = useRows(items);
  return (
    <div className="grid gap-4">
      {list.rows.length === 0 && (
        <CheckField name="hasNoBallast" label="There is no ballast in it" defaultChecked={hasNone} />
      )}
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Weight ${index + 1}`} isOrdered={false}>
          <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-3">
            <TextField
              name={`ballast.${index}.name`}
              label="Name"
              isOptional
              maxLength={60}
              defaultValue={row.start.name}
            />
            <SelectField
              name={`ballast.${index}.metal`}
              label="Metal"
              options={METALS}
              defaultValue={row.start.metal}
            />
            <SelectField name={`ballast.${index}.place`} label="Sits" options={PLACES} defaultValue={row.start.place} />
            <QuantityField
              name={`ballast.${index}.massG`}
              label="Mass"
              unit={massSign}
              defaultValue={row.start.massG}
            />
            <QuantityField
              name={`ballast.${index}.xMm`}
              label="From the nose"
              hint="To its middle."
              unit={lengthSign}
              defaultValue={row.start.xMm}
            />
            <QuantityField
              name={`ballast.${index}.zMm`}
              label="Above the middle line"
              hint="With a minus below it."
              unit={lengthSign}
              defaultValue={row.start.zMm}
            />
          </div>
        </RowFrame>
      ))}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={() => list.add(NEW)}>
          Add a weight
        </button>
      </div>
    </div>
  );
}
