import type { Metadata } from 'next';
import { ActionForm } from '@/app/_ui/action-form';
import { TextAreaField, TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { KIND_WORDS } from '@/app/stock/_components/words';
import { MATERIAL_KINDS } from '@/lib/contracts/material-forms';
import { addMaterialAction } from '../actions';

export const metadata: Metadata = { title: 'New material' };

export default function NewMaterialPage() {
  return (
    <Page title="New material" up={{ href: '/stock', label: 'Stock' }}>
      <Card className="max-w-2xl">
        <ActionForm action={addMaterialAction}>
          <SelectField
            name="kind"
            label="Kind"
            hint="An adhesive or a coating gets a data sheet next."
            emptyLabel="choose"
            options={MATERIAL_KINDS.map((value) => ({ value, label: KIND_WORDS[value] }))}
          />
          <TextField
            name="name"
            label="Name"
            hint="As you call it in the shop; with size and temper for wire and hardware."
            maxLength={100}
          />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} />
          <div>
            <SubmitButton pendingText="Adding…">Add to Stock</SubmitButton>
          </div>
        </ActionForm>
      </Card>
    </Page>
  );
}
