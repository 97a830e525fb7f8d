'use client';

import type { ReactNode } from 'react';
import { FieldError, useField } from './field';

export interface CheckFieldProps {
  readonly name: string;
  readonly label: ReactNode;
  readonly value?: string;
  readonly defaultChecked?: boolean;
  readonly hint?: ReactNode;
}

/** One box to tick. */
export function CheckField({ name, label, value = 'on', defaultChecked = false, hint }: CheckFieldProps) {
  const field = useField(name, undefined, hint !== undefined);
  const id = `${field.id}-${value}`;
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="flex min-h-touch items-center gap-3">
        <input
          id={id}
          type="checkbox"
          name={name}
          value={value}
          defaultChecked={defaultChecked}
          aria-invalid={field.error !== undefined}
          aria-describedby={field.describedBy}
          className="size-6 shrink-0 accent-ink"
        />
        <span>{label}</span>
      </label>
      {hint !== undefined && (
        <p id={`${field.id}-hint`} className="pl-9 text-sm text-ink-soft">
          {hint}
        </p>
      )}
      {field.error !== undefined && <FieldError id={field.id} text={field.error} />}
    </div>
  );
}

export interface RadioFieldProps {
  readonly name: string;
  readonly legend: ReactNode;
  readonly options: readonly { readonly value: string; readonly label: ReactNode }[];
  readonly defaultValue?: string | undefined;
  readonly hint?: ReactNode;
  readonly onPick?: (value: string) => void;
}

/** One of a few, all of them in sight. */
export function RadioField({ name, legend, options, defaultValue, hint, onPick }: RadioFieldProps) {
  const field = useField(name, defaultValue, hint !== undefined);
  return (
    <fieldset aria-describedby={field.describedBy} className="grid min-w-0 content-start gap-1.5">
      <legend className="mb-1.5 font-semibold">{legend}</legend>
      {hint !== undefined && (
        <p id={`${field.id}-hint`} className="text-sm text-ink-soft">
          {hint}
        </p>
      )}
      <div className="flex flex-wrap gap-2">
        {options.map((option) => (
          <label
            key={option.value}
            className="flex min-h-touch items-center gap-2.5 rounded-sheet border-2 border-line-strong bg-sheet px-3 py-1.5 has-checked:border-ink has-checked:bg-well has-checked:font-semibold has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-accent"
          >
            <input
              type="radio"
              name={name}
              value={option.value}
              defaultChecked={option.value === field.value}
              onChange={onPick === undefined ? undefined : () => onPick(option.value)}
              className="size-5 shrink-0 accent-ink"
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {field.error !== undefined && <FieldError id={field.id} text={field.error} />}
    </fieldset>
  );
}

const DAYS = [
  { value: '1', label: 'Mon' },
  { value: '2', label: 'Tue' },
  { value: '3', label: 'Wed' },
  { value: '4', label: 'Thu' },
  { value: '5', label: 'Fri' },
  { value: '6', label: 'Sat' },
  { value: '7', label: 'Sun' },
] as const;

export interface WeekdaysFieldProps {
  /** Name without the ending `[]`. */
  readonly name: string;
  readonly legend: ReactNode;
  /** ISO 8601: 1 Monday to 7 Sunday. */
  readonly defaultDays: readonly number[];
}

/** The days of the week on which something holds. */
export function WeekdaysField({ name, legend, defaultDays }: WeekdaysFieldProps) {
  const field = useField(name, undefined, false);
  return (
    <fieldset aria-describedby={field.describedBy} className="grid min-w-0 content-start gap-1.5">
      <legend className="mb-1.5 font-semibold">{legend}</legend>
      <div className="flex flex-wrap gap-1.5">
        {DAYS.map((day) => (
          <label
            key={day.value}
            className="relative flex min-h-touch min-w-touch items-center justify-center rounded-sheet border-2 border-line-strong bg-sheet px-2 text-sm has-checked:border-ink has-checked:bg-ink has-checked:font-semibold has-checked:text-ink-inverse has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-accent"
          >
            <input
              type="checkbox"
              name={`${name}[]`}
              value={day.value}
              defaultChecked={defaultDays.includes(Number(day.value))}
              aria-invalid={field.error !== undefined}
              className="absolute inset-0 size-full cursor-pointer opacity-0"
            />
            {day.label}
          </label>
        ))}
      </div>
      {field.error !== undefined && <FieldError id={field.id} text={field.error} />}
    </fieldset>
  );
}
