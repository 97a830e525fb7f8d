'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { useRows } from '@/app/_ui/rows';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { WAIT_WORDS } from '@/app/models/_components/words';
import type { Wait } from '@/lib/batch/plan';

const WAIT_OPTIONS = Object.entries(WAIT_WORDS).map(([value, label]) => ({ value, label }));

export interface NeedRowsProps {
  readonly needs: readonly { readonly after: string; readonly wait: Wait }[];
  readonly path: string;
  readonly above: readonly SelectOption[];
}

/** What a step waits for: steps above it, each until something is true of it. */
export function NeedRows({ needs, path, above }: NeedRowsProps) {
  const list = useRows(needs);
  if (above.length === 0 && list.rows.length === 0) return null;
  return (
    <div className="grid gap-3 border-l-2 border-line-strong pl-4">
      {list.rows.map((row, index) => (
        <fieldset key={row.key} className="grid items-start gap-3 sm:grid-cols-[1fr_1fr_auto]">
          <legend className="sr-only">Waits for, {index + 1}</legend>
          <SelectField
            name={`${path}.${index}.after`}
            label="Waits for"
            emptyLabel="choose a step above"
            options={above}
            defaultValue={row.start.after}
          />
          <SelectField
            name={`${path}.${index}.wait`}
            label="until it is"
            options={WAIT_OPTIONS}
            defaultValue={row.start.wait}
          />
          <button type="button" className={`${buttonClass('quiet')} sm:mt-8`} onClick={() => list.remove(index)}>
            Do not wait
          </button>
        </fieldset>
      ))}
      <div>
        <button
          type="button"
          className={buttonClass('quiet')}
          onClick={() => list.add({ after: above.at(-1)?.value ?? '', wait: 'done' })}
        >
          {list.rows.length === 0 ? 'Let it wait for a step' : 'Wait for one more step'}
        </button>
      </div>
    </div>
  );
}
