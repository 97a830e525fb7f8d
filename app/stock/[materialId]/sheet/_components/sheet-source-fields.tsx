import { TextField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SOURCE_OPTIONS } from '@/app/stock/_components/figure-source-fields';
import type { SheetText } from './sheet-text';

export interface SheetSourceFieldsProps {
  readonly text: SheetText;
  readonly sheetRevision: string;
  readonly sheetOn: string | null;
}

/** Which sheet it is: the source of every figure that names no other. */
export function SheetSourceFields({ text, sheetRevision, sheetOn }: SheetSourceFieldsProps) {
  return (
    <Section title="The sheet" lead="Stands beside every figure below that names no source of its own.">
      <div className="grid gap-5 sm:grid-cols-2">
        <SelectField
          name="source.kind"
          label="Kind of source"
          options={SOURCE_OPTIONS}
          defaultValue={text.source.kind}
        />
        <TextField
          name="source.text"
          label="Where the figures stand"
          hint="Name and page of the sheet."
          maxLength={1000}
          defaultValue={text.source.text}
        />
        <TextField
          name="sheetRevision"
          label="Revision of the sheet"
          isOptional
          maxLength={120}
          defaultValue={sheetRevision}
        />
        <TextField
          name="sheetOn"
          type="date"
          label="Date of the sheet"
          isOptional
          defaultValue={sheetOn ?? undefined}
        />
      </div>
    </Section>
  );
}
