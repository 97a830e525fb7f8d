'use client';

import { FieldFrame, type FieldProps, useField } from './field';
import { inputClass } from './input-class';

export interface SelectOption {
  readonly value: string;
  readonly label: string;
  /** Options with the same group are shown together under it. */
  readonly group?: string;
}

export interface SelectFieldProps extends FieldProps {
  readonly options: readonly SelectOption[];
  /** Text of the empty choice; without it there is none. */
  readonly emptyLabel?: string;
  readonly onPick?: (value: string) => void;
}

export function SelectField(props: SelectFieldProps) {
  const { name, label, hint, isOptional = false, defaultValue, options, emptyLabel, onPick } = props;
  const field = useField(name, defaultValue, hint !== undefined);
  return (
    <FieldFrame id={field.id} label={label} hint={hint} error={field.error} isOptional={isOptional}>
      <select
        // A select does not follow a new default by itself.
        key={field.value}
        id={field.id}
        name={name}
        defaultValue={field.value}
        required={!isOptional}
        aria-invalid={field.error !== undefined}
        aria-describedby={field.describedBy}
        onChange={onPick === undefined ? undefined : (event) => onPick(event.currentTarget.value)}
        className={inputClass}
      >
        {emptyLabel !== undefined && <option value="">{emptyLabel}</option>}
        <Options options={options} />
      </select>
    </FieldFrame>
  );
}

function Options({ options }: { readonly options: readonly SelectOption[] }) {
  const groups = [...new Set(options.map((option) => option.group))];
  return groups.map((group) => {
    const members = options
      .filter((option) => option.group === group)
      .map((option) => (
        <option key={option.value} value={option.value}>
          {option.label}
        </option>
      ));
    return group === undefined ? (
      members
    ) : (
      <optgroup key={group} label={group}>
        {members}
      </optgroup>
    );
  });
}
