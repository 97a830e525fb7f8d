import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';

interface Start {
  readonly id: string;
  readonly name: string;
}

export interface StartChoiceProps {
  /** The page of the form: it comes back with `from` in its address. */
  readonly action: string;
  readonly label: string;
  readonly starts: readonly Start[];
  readonly chosen: Start | null;
  /** Said while nothing is chosen. */
  readonly hint: string;
}

/** Fills the form below with figures that come with the app. */
export function StartChoice({ action, label, starts, chosen, hint }: StartChoiceProps) {
  return (
    <form action={action} className="grid gap-2">
      <div className="flex max-w-2xl flex-wrap items-end gap-3">
        <label className="grid min-w-0 flex-1 gap-1.5">
          <span className="font-semibold">{label}</span>
          <select name="from" defaultValue={chosen?.id ?? ''} key={chosen?.id} className={inputClass}>
            <option value="">no: from what is entered now</option>
            {starts.map((start) => (
              <option key={start.id} value={start.id}>
                {start.name}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" className={buttonClass('plain')}>
          Fill the form
        </button>
      </div>
      <p className="max-w-2xl text-sm text-ink-soft">
        {chosen === null ? hint : `The form below holds the figures of “${chosen.name}”. Nothing is saved yet.`}
      </p>
    </form>
  );
}
