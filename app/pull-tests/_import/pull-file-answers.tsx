'use client';

import { type FormEvent, useId } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import type { PullFileQuestion } from './pull-file-view';

export interface PullFileAnswersProps {
  readonly questions: readonly PullFileQuestion[];
  readonly onAnswer: (answers: Readonly<Record<string, string>>) => void;
}

/** What the file leaves open. A wrong unit would spoil every load, so that none is guessed. */
export function PullFileAnswers({ questions, onAnswer }: PullFileAnswersProps) {
  const id = useId();

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    onAnswer(Object.fromEntries(questions.map(({ name }) => [name, String(data.get(name) ?? '')])));
  }

  return (
    <form onSubmit={submit} className="grid max-w-2xl gap-4">
      {questions.map(({ name, label, example, options }) => (
        <div key={name} className="grid gap-1.5">
          <label htmlFor={`${id}-${name}`} className="font-semibold">
            {label}
          </label>
          <select id={`${id}-${name}`} name={name} className={inputClass}>
            {options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ))}
          </select>
          <p className="text-sm text-ink-soft">The file says: {example}</p>
        </div>
      ))}
      <div>
        <button type="submit" className={buttonClass('primary')}>
          Read the file with this
        </button>
      </div>
    </form>
  );
}
