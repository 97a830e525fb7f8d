import { buttonClass } from './button-class';
import { inputClass } from './input-class';

export interface SearchFormProps {
  readonly label: string;
  readonly text: string;
  /** Other choices of the page that the search keeps. */
  readonly kept?: Readonly<Record<string, string>>;
}

/** Searches a long list on the server; a plain form that needs no script. */
export function SearchForm({ label, text, kept = {} }: SearchFormProps) {
  return (
    <search>
      <form className="flex max-w-md items-end gap-2">
        {Object.entries(kept).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <label className="grid flex-1 gap-1.5">
          <span className="font-semibold">{label}</span>
          <input type="search" name="q" defaultValue={text} maxLength={80} className={inputClass} />
        </label>
        <button type="submit" className={buttonClass('plain')}>
          Search
        </button>
      </form>
    </search>
  );
}
