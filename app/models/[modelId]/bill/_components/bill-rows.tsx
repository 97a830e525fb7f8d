'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { TextField } from '@/app/_ui/field';
import { RowFrame, useRows } from '@/app/_ui/rows';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';

/** A line of the bill as the form's text. */
export interface BillLineText {
  readonly materialId: string;
  readonly quantity: string;
  readonly unit: string;
  readonly note: string;
}

export interface BillRowsProps {
  readonly lines: readonly BillLineText[];
  readonly materials: readonly SelectOption[];
  readonly units: readonly SelectOption[];
}

const NEW_LINE: BillLineText = { materialId: '', quantity: '', unit: 'pieces', note: '' };

/** What goes into one piece, line by line. */
export function BillRows({ lines, materials, units }: BillRowsProps) {
  const list = useRows(lines);
  return (
    <div className="grid gap-4">
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Line ${index + 1}`}>
          <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-[2fr_1fr_1fr_2fr]">
            <SelectField
              name={`lines.${index}.materialId`}
              label="Material"
              emptyLabel="choose"
              options={materials}
              defaultValue={row.start.materialId}
            />
            <TextField
              name={`lines.${index}.quantity`}
              label="Quantity"
              maxLength={40}
              defaultValue={row.start.quantity}
            />
            <SelectField
              name={`lines.${index}.unit`}
              label="Counted as"
              options={units}
              defaultValue={row.start.unit}
            />
            <TextField
              name={`lines.${index}.note`}
              label="Note"
              isOptional
              maxLength={200}
              defaultValue={row.start.note}
            />
          </div>
        </RowFrame>
      ))}
      {list.rows.length === 0 && <p className="text-ink-soft">Nothing in the bill yet.</p>}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={() => list.add(NEW_LINE)}>
          Add a line
        </button>
      </div>
    </div>
  );
}
