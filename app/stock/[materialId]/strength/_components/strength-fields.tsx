import { CheckField } from '@/app/_ui/choice-field';
import { QuantityField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { FigureSourceFields } from '@/app/stock/_components/figure-source-fields';
import type { StrengthField, StrengthValues } from '@/app/stock/_components/strength-figures';
import { strengthInput, strengthSign } from '@/app/stock/_components/strength-unit';
import type { FigureSource } from '@/lib/materials/figure-source';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface StrengthFieldsProps {
  readonly fields: readonly StrengthField[];
  readonly values: StrengthValues;
  /** Sources that differ from the one for all. */
  readonly sources: Readonly<Partial<Record<string, FigureSource>>>;
  readonly units: UnitChoice;
}

/** The figures of a material's strength as fields, each with a place for its own source. */
export function StrengthFields({ fields, values, sources, units }: StrengthFieldsProps) {
  return (
    <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-3">
      {fields.map((field) => (
        <div key={field.name} className="grid content-start gap-1">
          <Field field={field} value={values[field.name]} units={units} />
          {field.field !== 'tick' && field.hasSource === true && (
            <FigureSourceFields figure={field.name} label={field.label} own={sources[field.name]} />
          )}
        </div>
      ))}
    </div>
  );
}

interface FieldProps {
  readonly field: StrengthField;
  readonly value: number | string | boolean | undefined;
  readonly units: UnitChoice;
}

function Field({ field, value, units }: FieldProps) {
  const { name, label, hint, isOptional = false } = field;
  switch (field.field) {
    case 'tick':
      return <CheckField name={name} label={label} defaultChecked={value === true} />;
    case 'word':
      return (
        <SelectField
          name={name}
          label={label}
          hint={hint}
          isOptional={isOptional}
          {...(isOptional ? { emptyLabel: 'not said' } : {})}
          options={field.words}
          defaultValue={typeof value === 'string' ? value : undefined}
        />
      );
    case 'figure':
      return (
        <QuantityField
          name={name}
          label={label}
          hint={hint}
          isOptional={isOptional}
          unit={strengthSign(field.unit, units)}
          defaultValue={typeof value === 'number' ? strengthInput(value, field.unit, units) : undefined}
        />
      );
  }
}
