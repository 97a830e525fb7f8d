import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import { type TabulatedWood, WOOD_TABLE } from '@/lib/materials/wood-table';

export interface WoodChoiceProps {
  readonly materialId: string;
  readonly chosen: TabulatedWood | null;
}

/** Fills the form with the printed figures of a wood. */
export function WoodChoice({ materialId, chosen }: WoodChoiceProps) {
  return (
    <form action={`/stock/${materialId}/strength`} className="grid gap-2">
      <div className="flex max-w-2xl flex-wrap items-end gap-3">
        <label className="grid min-w-0 flex-1 gap-1.5">
          <span className="font-semibold">Start from a wood of the Wood Handbook</span>
          <select name="from" defaultValue={chosen?.id ?? ''} key={chosen?.id} className={inputClass}>
            <option value="">no: from what is entered now</option>
            {WOOD_TABLE.map((wood) => (
              <option key={wood.id} value={wood.id}>
                {wood.name}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" className={buttonClass('plain')}>
          Fill the form
        </button>
      </div>
      <p className="max-w-2xl text-sm text-ink-soft">
        {chosen === null
          ? 'Means of small clear specimens, never design values. Nothing is saved by it.'
          : `The form below holds the figures of “${chosen.name}”. Nothing is saved yet.`}
      </p>
    </form>
  );
}
