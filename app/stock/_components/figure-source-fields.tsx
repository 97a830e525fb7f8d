import { TextField } from '@/app/_ui/field';
import { SelectField } from '@/app/_ui/select-field';
import { SOURCE_WORDS } from '@/app/stock/_components/words';

export const SOURCE_OPTIONS = Object.entries(SOURCE_WORDS).map(([value, label]) => ({ value, label }));

export interface FigureSourceFieldsProps {
  /** Name of the figure in the form. */
  readonly figure: string;
  readonly label: string;
  readonly own: { readonly kind: string; readonly text: string } | undefined;
}

/** Where one figure comes from, when that is not the source named at the top. */
export function FigureSourceFields({ figure, label, own }: FigureSourceFieldsProps) {
  return (
    <details open={own !== undefined} className="text-sm">
      <summary className="inline-flex min-h-touch items-center text-ink-soft underline decoration-line-strong underline-offset-4">
        {own === undefined ? 'Another source' : 'Its source'}
        <span className="sr-only">: {label}</span>
      </summary>
      <div className="mt-2 grid gap-3">
        <SelectField
          name={`sources.${figure}.kind`}
          label={
            <>
              Kind of source<span className="sr-only"> of {label}</span>
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
              Where it stands<span className="sr-only">, {label}</span>
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
