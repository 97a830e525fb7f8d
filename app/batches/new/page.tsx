import { randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import type { SearchParams } from '@/app/_server/list-query';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { TextAreaField, TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { openBatchAction } from '@/app/batches/actions';
import { MAX_QUANTITY } from '@/lib/contracts/batch-event';
import { db } from '@/prisma/client';
import { listRevisionChoices, type RevisionChoice } from '@/prisma/data/revision-choices';

export const metadata: Metadata = { title: 'New batch' };

/** The form of a new batch. `?revision=` chooses one beforehand. */
export default async function NewBatchPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const choices = (await listRevisionChoices(await db())).filter(({ operationCount }) => operationCount > 0);
  const { revision } = await searchParams;
  return (
    <Page
      title="New batch"
      lead="A batch is a number of pieces of one model revision, made along its route."
      up={{ href: '/batches', label: 'Batches' }}
    >
      {choices.length === 0 ? (
        <EmptyState title="No model has a route yet" action={<ButtonLink href="/models">Go to the models</ButtonLink>}>
          <p>
            A batch follows the route of its model: cut, glue, sand, coat. Make a model and give it operations first.
          </p>
        </EmptyState>
      ) : (
        <Card className="max-w-2xl">
          <ActionForm action={openBatchAction}>
            {/* Sent twice, the form opens one batch. */}
            <input type="hidden" name="batchId" value={randomUUID()} />
            <SelectField
              name="revisionId"
              label="Model"
              hint="A draft revision is frozen when its first batch is opened: it will not change any more."
              emptyLabel="choose"
              options={choices.map(toOption)}
              defaultValue={typeof revision === 'string' ? revision : undefined}
            />
            <TextField name="quantity" label="Pieces" hint={`1 to ${MAX_QUANTITY}`} inputMode="numeric" maxLength={5} />
            <TextField name="dueOn" label="Due on" type="date" isOptional />
            <TextAreaField
              name="orderNote"
              label="Order note"
              hint="For whom, which colours."
              isOptional
              maxLength={500}
            />
            <div>
              <SubmitButton pendingText="Opening…">Open the batch</SubmitButton>
            </div>
          </ActionForm>
        </Card>
      )}
    </Page>
  );
}

function toOption({ id, modelName, letter, isFrozen }: RevisionChoice) {
  return { value: id, label: `${modelName}, revision ${letter}${isFrozen ? '' : ' (draft)'}` };
}
