import { buttonClass } from '@/app/_ui/button-class';
import { inputClass } from '@/app/_ui/input-class';
import { type SeedMaterial, STARTING_MATERIALS } from '@/prisma/seed/starting-materials';

export interface GenericChoiceProps {
  readonly materialId: string;
  readonly chosen: SeedMaterial | null;
}

/** Fills the form with the general figures of a class, for who has no sheet at hand. */
export function GenericChoice({ materialId, chosen }: GenericChoiceProps) {
  return (
    <form action={`/stock/${materialId}/sheet`} className="grid gap-2">
      <div className="flex max-w-2xl flex-wrap items-end gap-3">
        <label className="grid min-w-0 flex-1 gap-1.5">
          <span className="font-semibold">Start from a general class</span>
          <select name="from" defaultValue={chosen?.id ?? ''} key={chosen?.id} className={inputClass}>
            <option value="">no: from what is entered now</option>
            {STARTING_MATERIALS.filter((start) => start.sheet !== null).map((start) => (
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
        {chosen === null
          ? 'Takes the place of what is in the form below; nothing is saved by it.'
          : `The form below holds the figures of “${chosen.name}”. Nothing is saved yet.`}
      </p>
    </form>
  );
}
