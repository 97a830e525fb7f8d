'use client';

export interface TogglePickerProps {
  readonly legend: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly picked: ReadonlySet<string>;
  readonly onPick: (picked: ReadonlySet<string>) => void;
}

/** A few named things, each taken in or left out by a tap. */
export function TogglePicker({ legend, options, picked, onPick }: TogglePickerProps) {
  const toggle = (id: string) => {
    const next = new Set(picked);
    if (!next.delete(id)) next.add(id);
    onPick(next);
  };
  return (
    <fieldset className="grid gap-2">
      <legend className="font-semibold">{legend}</legend>
      <div className="flex flex-wrap gap-2">
        {options.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            aria-pressed={picked.has(id)}
            onClick={() => toggle(id)}
            className="min-h-touch rounded-sheet border-2 border-line-strong bg-sheet px-3 font-semibold aria-pressed:border-ink aria-pressed:bg-ink aria-pressed:text-ink-inverse"
          >
            {name}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
