import { TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { FIGURE_WORDS, SOURCE_WORDS } from '@/app/stock/_components/words';
import type { FigureName } from '@/lib/cure/adhesive-sheet';
import type { SheetText } from './sheet-text';

export const SOURCE_OPTIONS = Object.entries(SOURCE_WORDS).map(([value, label]) => ({ value, label }));

export interface OwnSourceProps {
  readonly figure: FigureName;
  readonly text: SheetText;
}

/** Where one figure comes from, when that is not the source named at the top. */
export function OwnSource({ figure, text }: OwnSourceProps) {
  const own = text.sources[figure];
  return (
    <details open={own !== undefined} className="text-sm">
      <summary className="inline-flex min-h-touch items-center text-ink-soft underline decoration-line-strong underline-offset-4">
        {own === undefined ? 'Another source' : 'Its source'}
        <span className="sr-only">: {FIGURE_WORDS[figure]}</span>
      </summary>
      <div className="mt-2 grid gap-3">
        <SelectField
          name={`sources.${figure}.kind`}
          label={
            <>
              Kind of source<span className="sr-only"> of {FIGURE_WORDS[figure]}</span>
            </>
          }
          emptyLabel="as at the top"
          options={SOURCE_OPTIONS}
          defaultValue={own?.kind}
          isOptional
        />
        <TextField
          name={`sources.${figure}.text`}
          label={
            <>
              Where it stands<span className="sr-only">, {FIGURE_WORDS[figure]}</span>
            </>
          }
          maxLength={1000}
          defaultValue={own?.text}
          isOptional
        />
      </div>
    </details>
  );
}
