import { ActionForm } from '@/app/_ui/action-form';
import { TextAreaField, TextField } from '@/app/_ui/field';
import { Card } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { Model } from '@/prisma/data/models';
import { saveModelAction, setArchivedAction } from '../actions';

/** Name and note of a model, and putting it away. */
export function ModelCare({ model }: { readonly model: Model }) {
  return (
    <div className="grid gap-5 md:grid-cols-2">
      <Card>
        <ActionForm action={saveModelAction.bind(null, model.id)}>
          <TextField name="name" label="Name" maxLength={80} defaultValue={model.name} />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} defaultValue={model.note} />
          <div>
            <SubmitButton>Save name and note</SubmitButton>
          </div>
        </ActionForm>
      </Card>
      <Card>
        <ActionForm action={setArchivedAction.bind(null, model.id, !model.isArchived)}>
          <p className="text-ink-soft">
            {model.isArchived
              ? 'This model was put away: it is not offered for new batches.'
              : 'A model you no longer make can be put away. Its revisions, batches and pull tests stay, and it can be taken out again.'}
          </p>
          <div>
            <SubmitButton weight="plain">{model.isArchived ? 'Take it out again' : 'Archive this model'}</SubmitButton>
          </div>
        </ActionForm>
      </Card>
    </div>
  );
}
