'use client';

import { useRef } from 'react';
import { choosePerson } from '@/app/_server/device-actions';
import { buttonClass } from './button-class';

export interface PersonChoiceProps {
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly personId: string | null;
}

/** Who stands at this device: what is logged here is logged in their name. */
export function PersonChoice({ people, personId }: PersonChoiceProps) {
  const form = useRef<HTMLFormElement>(null);
  if (people.length === 0) return null;
  return (
    <form ref={form} action={choosePerson} className="flex items-center gap-2">
      <label htmlFor="person-choice" className="text-sm whitespace-nowrap text-ink-soft max-sm:sr-only">
        At the bench:
      </label>
      <select
        // A select does not follow a new default by itself.
        key={personId}
        id="person-choice"
        name="personId"
        defaultValue={personId ?? ''}
        onChange={() => form.current?.requestSubmit()}
        className="min-h-touch max-w-40 rounded-sheet border border-line-strong bg-sheet px-2 font-semibold"
      >
        <option value="">who is here?</option>
        {people.map((person) => (
          <option key={person.id} value={person.id}>
            {person.name}
          </option>
        ))}
      </select>
      <noscript>
        <button type="submit" className={buttonClass('quiet')}>
          Choose
        </button>
      </noscript>
    </form>
  );
}
