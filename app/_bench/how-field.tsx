'use client';

const WAYS = [
  { value: 'void', label: 'It did not happen' },
  { value: 'replace', label: 'It happened otherwise' },
] as const;

export interface HowFieldProps {
  readonly how: 'void' | 'replace';
  readonly onChange: (how: 'void' | 'replace') => void;
}

/** Takes an entry back, or puts another in its place. */
export function HowField({ how, onChange }: HowFieldProps) {
  return (
    <fieldset className="flex flex-wrap gap-2">
      <legend className="sr-only">What is wrong with the entry</legend>
      {WAYS.map(({ value, label }) => (
        <label
          key={value}
          className="flex min-h-touch items-center gap-2.5 rounded-sheet border-2 border-line-strong bg-sheet px-3 has-checked:border-ink has-checked:bg-well has-checked:font-semibold has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-accent"
        >
          <input
            type="radio"
            name="how"
            value={value}
            checked={how === value}
            onChange={() => onChange(value)}
            className="size-5 accent-ink"
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
