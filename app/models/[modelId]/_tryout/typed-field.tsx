'use client';

import { useId, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { FieldError } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';

/** A value read from what was typed, or what to write instead. */
export type TypedValue = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly need: string };

export interface TypedFieldProps {
  readonly label: string;
  readonly unit: string;
  /** Null: not entered. */
  readonly value: number | null;
  readonly textOf: (value: number) => string;
  readonly read: (text: string) => TypedValue;
  readonly onValue: (value: number) => void;
  /** One step up or down. */
  readonly onStep: (way: 1 | -1) => void;
  readonly stepWords: readonly [less: string, more: string];
  readonly hint?: string;
}

/** A figure that can be typed, or stepped with two buttons; what is wrong with it is said beside it as it is typed. */
export function TypedField(props: TypedFieldProps) {
  const { label, unit, value, textOf, read, onValue, onStep, stepWords, hint } = props;
  const id = useId();
  const shown = value === null ? '' : textOf(value);
  const [typing, setTyping] = useState<string | null>(null);
  const answer = typing === null || typing.trim() === '' ? null : read(typing);
  const error = answer?.ok === false ? answer.need : undefined;
  const type = (text: string) => {
    setTyping(text);
    const now = text.trim() === '' ? null : read(text);
    if (now?.ok === true) onValue(now.value);
  };
  const step = (way: 1 | -1) => {
    setTyping(null);
    onStep(way);
  };
  return (
    <div className="grid min-w-0 content-start gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <div className="grid grid-cols-[auto_1fr_auto] gap-1.5">
        <button type="button" aria-label={stepWords[0]} className={buttonClass('plain')} onClick={() => step(-1)}>
          −
        </button>
        <span className="relative block min-w-0">
          <input
            id={id}
            value={typing ?? shown}
            maxLength={40}
            autoComplete="off"
            aria-invalid={error !== undefined}
            aria-describedby={[error === undefined ? '' : `${id}-error`, hint === undefined ? '' : `${id}-hint`]
              .join(' ')
              .trim()}
            className={`${inputClass} pr-11`}
            onChange={(event) => type(event.currentTarget.value)}
            onBlur={() => {
              if (error === undefined) setTyping(null);
            }}
          />
          <span className="pointer-events-none absolute inset-y-0 right-3 flex items-center text-sm text-ink-soft">
            {unit}
          </span>
        </span>
        <button type="button" aria-label={stepWords[1]} className={buttonClass('plain')} onClick={() => step(1)}>
          +
        </button>
      </div>
      {error !== undefined && <FieldError id={id} text={error} />}
      {hint !== undefined && (
        <p id={`${id}-hint`} className="text-sm text-ink-soft">
          {hint}
        </p>
      )}
    </div>
  );
}
