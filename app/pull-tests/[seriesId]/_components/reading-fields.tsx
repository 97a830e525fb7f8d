import { CheckField, RadioField } from '@/app/_ui/choice-field';
import { QuantityField, TextAreaField, TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { modeText, PULL_MODES } from '@/lib/pulltest/pull-mode';
import { forceText } from '@/lib/units/format-quantity';
import type { ForceUnit } from '@/lib/units/unit-choice';
import type { Scale } from '@/prisma/data/scales';

export interface ReadingStart {
  readonly load?: string;
  readonly mode?: string;
  readonly isLowerBound?: boolean;
  readonly leftDamage?: boolean;
  readonly angleDeg?: string;
  readonly scaleId?: string;
  readonly pulledAt?: string;
  readonly note?: string;
}

export interface ReadingFieldsProps {
  readonly scales: readonly Scale[];
  readonly unit: ForceUnit;
  readonly start: ReadingStart;
}

/** What is written down of a pull. */
export function ReadingFields({ scales, unit, start }: ReadingFieldsProps) {
  return (
    <>
      <div className="max-w-xs text-2xl [&_input]:min-h-16 [&_input]:text-3xl [&_input]:font-bold">
        <QuantityField name="load" label="Greatest load" unit={unit} defaultValue={start.load} />
      </div>
      <div className="[&_label]:min-h-14 [&_label]:text-lg">
        <RadioField
          name="mode"
          legend="How it ended"
          defaultValue={start.mode}
          options={PULL_MODES.map((value) => ({ value, label: modeText(value) }))}
        />
      </div>
      <CheckField
        name="isLowerBound"
        label="At least this: I stopped, or the scale was at its end"
        defaultChecked={start.isLowerBound ?? false}
      />
      <SelectField
        name="scaleId"
        label="Scale"
        isOptional
        emptyLabel="not named"
        defaultValue={start.scaleId ?? ''}
        options={scales.map(({ id, name, greatestN }) => ({
          value: id,
          label: `${name}, to ${forceText(greatestN, unit)}`,
        }))}
      />
      <details>
        <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
          Angle, damage, another time, note
        </summary>
        <div className="grid gap-5 pt-3">
          <TextField
            name="angleDeg"
            label="Angle between pull and shank, degrees"
            hint="0 is straight. More than 10 is no straight pull and does not count."
            inputMode="decimal"
            defaultValue={start.angleDeg ?? '0'}
            maxLength={6}
          />
          <CheckField
            name="leftDamage"
            label="Nothing broke, but something cracked or slipped"
            defaultChecked={start.leftDamage ?? false}
          />
          <TextField
            name="pulledAt"
            label="Pulled at another time than now"
            type="datetime-local"
            isOptional
            defaultValue={start.pulledAt ?? ''}
          />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} rows={2} defaultValue={start.note} />
        </div>
      </details>
    </>
  );
}
