'use client';

import { useId, useState } from 'react';
import { FieldError } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';

/** Longest file the server takes. */
const LONGEST_BYTES = 64 * 1024 * 1024;

export interface FileChoiceProps {
  readonly onChoose: (file: File) => void;
  /** Whether a file was dealt with already. */
  readonly isAgain: boolean;
}

/** The file of a logger. It is sent as soon as it is chosen. */
export function FileChoice({ onChoose, isAgain }: FileChoiceProps) {
  const id = useId();
  const [error, setError] = useState<string | null>(null);

  function choose(file: File | undefined) {
    if (file === undefined) return;
    if (file.size === 0) setError('This file is empty. Let the logger write it again, or choose another.');
    else if (file.size > LONGEST_BYTES) {
      setError('This file is larger than 64 MB. Cut it into parts by month or year, and import them one by one.');
    } else {
      setError(null);
      onChoose(file);
    }
  }

  return (
    <div className="grid max-w-2xl gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {isAgain ? 'Another file of a logger' : 'File of the logger'}
      </label>
      <input
        id={id}
        type="file"
        accept=".csv,.txt,.tsv,.log,.dat,text/csv,text/plain,text/tab-separated-values"
        aria-invalid={error !== null}
        aria-describedby={error === null ? `${id}-hint` : `${id}-error ${id}-hint`}
        onChange={(event) => choose(event.currentTarget.files?.[0])}
        className={inputClass}
      />
      {error !== null && <FieldError id={id} text={error} />}
      <p id={`${id}-hint`} className="text-sm text-ink-soft">
        Up to 64 MB or 1,000,000 rows. Any separator, any usual date, °C or °F; what cannot be told from the file is
        asked.
      </p>
    </div>
  );
}
