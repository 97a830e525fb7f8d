import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import type { Model } from '@/prisma/data/models';

export interface CompareChoiceProps {
  readonly model: Model;
  readonly from: string;
  readonly to: string;
}

/** Which two revisions stand side by side. */
export function CompareChoice({ model, from, to }: CompareChoiceProps) {
  return (
    <form action={`/models/${model.id}/compare`} className="flex max-w-xl flex-wrap items-end gap-3">
      <Letter model={model} name="from" label="Revision" value={from} />
      <Letter model={model} name="to" label="against" value={to} />
      <button type="submit" className={buttonClass('plain')}>
        Compare
      </button>
    </form>
  );
}

interface LetterProps {
  readonly model: Model;
  readonly name: string;
  readonly label: string;
  readonly value: string;
}

function Letter({ model, name, label, value }: LetterProps) {
  return (
    <label className="grid gap-1.5">
      <span className="font-semibold">{label}</span>
      <select name={name} defaultValue={value} key={value} className={inputClass}>
        {model.revisions.map(({ letter }) => (
          <option key={letter} value={letter}>
            {letter}
          </option>
        ))}
      </select>
    </label>
  );
}
