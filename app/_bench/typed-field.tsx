'use client';

import { useId } from 'react';
import { FieldFrame } from '../_ui/field';
import { inputClass } from '../_ui/input-class';

export interface TypedFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly unit?: string;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly isOptional?: boolean;
  readonly isLong?: boolean;
}

/** A field of a bench dialog: kept by its dialog, so that a refusal loses nothing. */
export function TypedField(props: TypedFieldProps) {
  const { label, value, onChange, unit, hint, error, isOptional = false, isLong = false } = props;
  const id = useId();
  const described = [hint === undefined ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`].filter(Boolean);
  const common = {
    id,
    value,
    'aria-invalid': error !== undefined,
    'aria-describedby': described.length === 0 ? undefined : described.join(' '),
  };
  return (
    <FieldFrame
      id={id}
      label={unit === undefined ? label : `${label} (${unit})`}
      {...(hint === undefined ? {} : { hint })}
      error={error}
      isOptional={isOptional}
    >
      {isLong ? (
        <textarea
          {...common}
          rows={3}
          maxLength={2_000}
          className={inputClass}
          onChange={(event) => onChange(event.currentTarget.value)}
        />
      ) : (
        <input
          {...common}
          type="text"
          inputMode={unit === undefined ? 'text' : 'decimal'}
          autoComplete="off"
          maxLength={500}
          className={inputClass}
          onChange={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </FieldFrame>
  );
}
