import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { QuantityField, TextAreaField, TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { makeModelAction } from '../actions';

export const metadata: Metadata = { title: 'New model' };

export default async function NewModelPage() {
  const [shop, materials] = await Promise.all([currentShop(), db().then(listMaterialChoices)]);
  return (
    <Page
      title="New model"
      lead="A name, the wood and the length are enough to begin. Body, anchors, route and bill come next."
      up={{ href: '/models', label: 'Models' }}
    >
      <Card className="max-w-2xl">
        <ActionForm action={makeModelAction}>
          <TextField name="name" label="Name" maxLength={80} />
          <SelectField
            name="woodMaterialId"
            label="Wood"
            isOptional
            emptyLabel="not chosen yet"
            options={materialOptions(materials, ['wood'])}
          />
          <QuantityField
            name="length"
            label="Length of the body"
            hint={'As you write it: 2 3/4, 70 mm, 2.75"'}
            unit={lengthSign(shop.lengthUnit)}
          />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} />
          <div>
            <SubmitButton pendingText="Making…">Make the model</SubmitButton>
          </div>
        </ActionForm>
      </Card>
    </Page>
  );
}
