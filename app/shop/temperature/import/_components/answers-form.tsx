'use client';

import { type FormEvent, useId, useState } from 'react';
import type { AnswerName, QuestionView } from '@/app/_import/import-view';
import { buttonClass } from '@/app/_ui/button-class';
import { FieldError, FieldFrame } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';
import type { AnswerTexts } from './import-requests';
import type { ImportState } from './use-import';

export interface AnswersFormProps {
  readonly questions: readonly QuestionView[];
  readonly settings?: readonly (QuestionView & { readonly value: string })[];
  readonly state: ImportState;
  readonly onAnswer: (answers: AnswerTexts) => Promise<void>;
  readonly onRefuse: (fieldErrors: Readonly<Record<string, string>>) => void;
}

/** Questions that must be answered, or settings that may be changed; both read the file once more. */
export function AnswersForm({ questions, settings = [], state, onAnswer, onRefuse }: AnswersFormProps) {
  const formId = useId();
  const [isPending, setPending] = useState(false);

  async function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: AnswerName) => String(data.get(name) ?? '').trim();
    const open = questions.filter(({ name }) => text(name) === '');
    if (open.length > 0) {
      onRefuse(Object.fromEntries(open.map(({ name }) => [name, 'This has to be answered: the file does not tell.'])));
      event.currentTarget.querySelector<HTMLElement>(`[name="${open[0]?.name ?? ''}"]`)?.focus();
      return;
    }
    // Only what was changed: the rest stays as the file says.
    const changed = [...questions.map((question) => ({ ...question, value: '' })), ...settings].filter(
      ({ name, value }) => text(name) !== value && text(name) !== '',
    );
    setPending(true);
    await onAnswer(Object.fromEntries(changed.map(({ name }) => [name, text(name)])));
    setPending(false);
  }

  const fields = [
    ...questions.map((question) => ({ ...question, value: state.answers[question.name] ?? '' })),
    ...settings,
  ];
  return (
    <form onSubmit={submit} noValidate className="grid gap-5 pt-2">
      <div className="grid items-start gap-5 sm:grid-cols-2">
        {fields.map((field) => (
          <AnswerField
            key={field.name}
            {...field}
            id={`${formId}-${field.name}`}
            error={state.fieldErrors[field.name]}
          />
        ))}
      </div>
      <div>
        <button type="submit" disabled={isPending} className={buttonClass(questions.length > 0 ? 'primary' : 'plain')}>
          {isPending ? 'Reading…' : 'Read the file with this'}
        </button>
      </div>
    </form>
  );
}

interface AnswerFieldProps extends QuestionView {
  readonly id: string;
  readonly value: string;
  readonly error: string | undefined;
}

function AnswerField({ id, name, label, hint, options, value, error }: AnswerFieldProps) {
  const describedBy = [hint === '' ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`]
    .filter(Boolean)
    .join(' ');
  const shared = {
    'aria-invalid': error !== undefined,
    'aria-describedby': describedBy === '' ? undefined : describedBy,
  };
  if (options.length === 0) {
    const isYear = name === 'firstYear';
    return (
      <FieldFrame id={id} label={label} {...(hint === '' ? {} : { hint })} error={error}>
        <input
          {...shared}
          id={id}
          name={name}
          defaultValue={value}
          autoComplete="off"
          maxLength={isYear ? 4 : 60}
          inputMode={isYear ? 'numeric' : 'text'}
          list={name === 'timeZone' ? 'time-zones' : undefined}
          className={inputClass}
        />
      </FieldFrame>
    );
  }
  return (
    <fieldset aria-describedby={shared['aria-describedby']} className="grid content-start gap-1.5">
      <legend className="font-semibold">{label}</legend>
      {hint !== '' && (
        <p id={`${id}-hint`} className="text-sm break-words text-ink-soft">
          {hint}
        </p>
      )}
      <div className="flex flex-wrap gap-2">
        {options.map((option) => (
          <label
            key={option.value}
            className="flex min-h-touch min-w-0 items-center gap-2.5 rounded-sheet border-2 border-line-strong bg-sheet px-3 py-1.5 has-checked:border-ink has-checked:bg-well has-checked:font-semibold has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-accent"
          >
            <input
              type="radio"
              name={name}
              value={option.value}
              defaultChecked={option.value === value}
              className="size-5 shrink-0 accent-ink"
            />
            <span className="min-w-0 break-words">{option.label}</span>
          </label>
        ))}
      </div>
      {error !== undefined && <FieldError id={id} text={error} />}
    </fieldset>
  );
}
