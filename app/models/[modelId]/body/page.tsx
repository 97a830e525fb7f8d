import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { QuantityField, TextAreaField } from '@/app/_ui/field';
import { Card, Section } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { forceIn } from '@/lib/units/convert';
import { lengthInput, plainDecimals } from '@/lib/units/quantity-input';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveBodyAction } from '../draft-actions';
import { StationRows } from './_components/station-rows';

export const metadata: Metadata = { title: 'Body' };

export default async function BodyPage({ params }: { readonly params: Promise<{ modelId: string }> }) {
  const { modelId } = await params;
  const [{ model, revision }, shop, materials] = await Promise.all([
    loadDraft(modelId),
    currentShop(),
    db().then(listMaterialChoices),
  ]);
  const sign = lengthSign(shop.lengthUnit);
  const length = (mm: number) => lengthInput(mm, shop.lengthUnit);
  return (
    <DraftForm
      model={model}
      revision={revision}
      part="Body"
      lead="Write sizes as you read them off the rule or the calipers."
      action={saveBodyAction.bind(null, modelId, revision.id)}
    >
      <Card>
        <div className="grid gap-5 sm:grid-cols-2">
          <SelectField
            name="woodMaterialId"
            label="Wood"
            isOptional
            emptyLabel="not chosen yet"
            defaultValue={revision.wood?.id}
            options={materialOptions(materials, ['wood'], [revision.wood])}
          />
          <QuantityField
            name="length"
            label="Length of the body"
            hint="From the nose to the end of the tail, without eyes."
            unit={sign}
            defaultValue={length(revision.lengthMm)}
          />
          <QuantityField
            name="lineClass"
            label="Line it is made for"
            hint="Breaking strength. What the anchors will be judged against."
            unit={shop.forceUnit}
            isOptional
            defaultValue={
              revision.lineClassN === null ? undefined : plainDecimals(forceIn(shop.forceUnit, revision.lineClassN))
            }
          />
          <TextAreaField name="note" label="Note" isOptional maxLength={1000} defaultValue={revision.note} />
        </div>
      </Card>
      <Section
        title="Stations"
        lead="Height and width at places along the body, from the nose (0) to the tail. Ten are plenty; more where the shape changes fast."
      >
        <StationRows
          unit={sign}
          stations={revision.profile.map((station) => ({
            x: length(station.xMm),
            height: length(station.halfHeightMm * 2),
            width: length(station.halfWidthMm * 2),
          }))}
        />
      </Section>
    </DraftForm>
  );
}
