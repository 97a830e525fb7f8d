import { ActionForm } from '@/app/_ui/action-form';
import { TextAreaField, TextField } from '@/app/_ui/field';
import { Card } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { Material } from '@/prisma/data/materials';
import { saveMaterialAction, setMaterialArchivedAction } from '../actions';

/** Name and note of a material, and putting it away. */
export function MaterialCare({ material }: { readonly material: Material }) {
  return (
    <div className="grid gap-5 md:grid-cols-2">
      <Card>
        <ActionForm action={saveMaterialAction.bind(null, material.id)}>
          <TextField name="name" label="Name" maxLength={100} defaultValue={material.name} />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} defaultValue={material.note} />
          <div>
            <SubmitButton>Save name and note</SubmitButton>
          </div>
        </ActionForm>
      </Card>
      <Card>
        <ActionForm action={setMaterialArchivedAction.bind(null, material.id, !material.isArchived)}>
          <p className="text-ink-soft">
            {material.isArchived
              ? 'This material was put away: it is not offered for models and mixes.'
              : 'What you no longer buy can be put away. Models, mixes and lots that name it stay as they are.'}
          </p>
          <div>
            <SubmitButton weight="plain">
              {material.isArchived ? 'Take it out again' : 'Archive this material'}
            </SubmitButton>
          </div>
        </ActionForm>
      </Card>
    </div>
  );
}
