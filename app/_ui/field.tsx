'use client';

import type { ReactNode } from 'react';
import { useState } from 'react';
import { useActionForm } from './action-form';
import { inputClass } from './input-class';

export interface FieldProps {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly isOptional?: boolean;
  readonly defaultValue?: string | undefined;
}

interface FieldAnswer {
  readonly id: string;
  readonly error: string | undefined;
  readonly value: string | undefined;
  readonly describedBy: string | undefined;
}

/** Id, error and kept value of a field of the form around. */
export function useField(name: string, defaultValue: string | undefined, hasHint: boolean): FieldAnswer {
  const { state, formId } = useActionForm();
  const id = `${formId}-${name}`;
  const error = state.status === 'refused' ? state.fieldErrors[name] : undefined;
  // The browser keeps what was typed. Only a page that comes back whole, without scripts, has to bring it along.
  const [kept] = useState(state.status === 'refused' ? state.values[name] : undefined);
  const parts = [hasHint ? `${id}-hint` : '', error === undefined ? '' : `${id}-error`].filter((part) => part !== '');
  return {
    id,
    error,
    value: kept ?? defaultValue,
    describedBy: parts.length === 0 ? undefined : parts.join(' '),
  };
}

export interface FieldFrameProps {
  readonly id: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly error: string | undefined;
  readonly isOptional?: boolean;
  readonly children: ReactNode;
}

/** Label above the box; under it what is wrong, then the hint. Boxes of fields side by side so stand in line. */
export function FieldFrame({ id, label, hint, error, isOptional = false, children }: FieldFrameProps) {
  return (
    <div className="grid min-w-0 content-start gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {label}
        {isOptional && <span className="font-normal text-ink-soft"> (optional)</span>}
      </label>
      {children}
      {error !== undefined && <FieldError id={id} text={error} />}
      {hint !== undefined && (
        <p id={`${id}-hint`} className="text-sm text-ink-soft">
          {hint}
        </p>
      )}
    </div>
  );
}

/** What is wrong with a field, marked by shape and word. */
export function FieldError({ id, text }: { readonly id: string; readonly text: string }) {
  return (
    <p id={`${id}-error`} className="flex items-start gap-2 text-sm font-semibold text-accent">
      <svg viewBox="0 0 16 16" aria-hidden="true" className="mt-1 size-3.5 shrink-0 fill-current">
        <path d="M8 0 16 15H0Z" />
      </svg>
      <span>{text}</span>
    </p>
  );
}

/** What is wrong with a part of the form that is no single box. */
export function FieldMark({ name }: { readonly name: string }) {
  const field = useField(name, undefined, false);
  return field.error === undefined ? null : <FieldError id={field.id} text={field.error} />;
}

export interface TextFieldProps extends FieldProps {
  readonly type?: 'text' | 'date' | 'time' | 'datetime-local' | 'search';
  readonly inputMode?: 'text' | 'numeric' | 'decimal';
  readonly autoComplete?: string;
  readonly maxLength?: number;
  readonly placeholder?: string;
  /** Id of a datalist on the page with what is usually written here. */
  readonly list?: string;
  /** Told every time something is typed. */
  readonly onType?: (value: string) => void;
}

export function TextField(props: TextFieldProps) {
  const {
    name,
    label,
    hint,
    isOptional = false,
    defaultValue,
    type = 'text',
    autoComplete = 'off',
    onType,
    ...rest
  } = props;
  const field = useField(name, defaultValue, hint !== undefined);
  return (
    <FieldFrame id={field.id} label={label} hint={hint} error={field.error} isOptional={isOptional}>
      <input
        {...rest}
        id={field.id}
        name={name}
        type={type}
        autoComplete={autoComplete}
        defaultValue={field.value}
        onChange={onType === undefined ? undefined : (event) => onType(event.currentTarget.value)}
        required={!isOptional}
        aria-invalid={field.error !== undefined}
        aria-describedby={field.describedBy}
        className={inputClass}
      />
    </FieldFrame>
  );
}

export interface QuantityFieldProps extends FieldProps {
  /** The shop's unit, shown at the end of the box; another may be typed with its sign. */
  readonly unit: string;
  /** Told every time something is typed. */
  readonly onType?: (value: string) => void;
}

/** A measured quantity, typed as makers write it (`1 1/4`, `.041`, `32 mm`). The server reads it. */
export function QuantityField(props: QuantityFieldProps) {
  const { name, label, hint, isOptional = false, defaultValue, unit, onType } = props;
  const field = useField(name, defaultValue, hint !== undefined);
  return (
    <FieldFrame id={field.id} label={label} hint={hint} error={field.error} isOptional={isOptional}>
      <span className="relative block">
        <input
          id={field.id}
          name={name}
          type="text"
          inputMode="text"
          autoComplete="off"
          maxLength={40}
          defaultValue={field.value}
          onChange={onType === undefined ? undefined : (event) => onType(event.currentTarget.value)}
          required={!isOptional}
          aria-invalid={field.error !== undefined}
          aria-describedby={[field.describedBy, `${field.id}-unit`].filter(Boolean).join(' ')}
          className={`${inputClass} pr-16`}
        />
        <span
          id={`${field.id}-unit`}
          className="pointer-events-none absolute inset-y-0 right-3 flex items-center text-sm text-ink-soft"
        >
          {unit}
        </span>
      </span>
    </FieldFrame>
  );
}

export interface TextAreaFieldProps extends FieldProps {
  readonly rows?: number;
  readonly maxLength?: number;
}

export function TextAreaField(props: TextAreaFieldProps) {
  const { name, label, hint, isOptional = false, defaultValue, rows = 3, maxLength } = props;
  const field = useField(name, defaultValue, hint !== undefined);
  return (
    <FieldFrame id={field.id} label={label} hint={hint} error={field.error} isOptional={isOptional}>
      <textarea
        id={field.id}
        name={name}
        rows={rows}
        maxLength={maxLength}
        defaultValue={field.value}
        required={!isOptional}
        aria-invalid={field.error !== undefined}
        aria-describedby={field.describedBy}
        className={inputClass}
      />
    </FieldFrame>
  );
}
