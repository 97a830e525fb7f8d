import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { QuantityField, TextAreaField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { LINE_TYPE_WORDS } from '@/app/models/_components/words';
import { LINE_CLASSES } from '@/lib/strength/fishing-line';
import { forceIn } from '@/lib/units/convert';
import { lengthInput, massInput, plainDecimals, signedLengthInput } from '@/lib/units/quantity-input';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { DraftForm } from '../_components/draft-form';
import { loadDraft } from '../_components/load-draft';
import { saveBodyAction } from '../draft-actions';
import { BallastRows } from './_components/ballast-rows';
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
  const number = (value: number | null) => (value === null ? undefined : plainDecimals(value));
  return (
    <DraftForm
      model={model}
      revision={revision}
      part="Body"
      lead="Write sizes as you read them off the rule or the calipers."
      action={saveBodyAction.bind(null, modelId, revision.id)}
    >
      <Section title="Wood">
        <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-4">
          <SelectField
            name="woodMaterialId"
            label="Wood"
            isOptional
            emptyLabel="not chosen yet"
            defaultValue={revision.wood?.id}
            options={materialOptions(materials, ['wood'], [revision.wood])}
          />
          <QuantityField
            name="weighedDensity"
            label="Density as weighed"
            hint="Weight over volume of your blanks. Balsa says nothing without it."
            unit="kg/m³"
            isOptional
            defaultValue={number(revision.weighedDensityKgM3)}
          />
          <QuantityField
            name="moisture"
            label="Moisture"
            hint="12 % unless you write another."
            unit="%"
            isOptional
            defaultValue={number(revision.moisturePercent)}
          />
          <QuantityField
            name="length"
            label="Length of the body"
            hint="From the nose to the end of the tail, without eyes."
            unit={sign}
            defaultValue={length(revision.lengthMm)}
          />
        </div>
      </Section>
      <Section
        title="Line"
        lead="What the anchors are judged against. Knot and drag: the usual unless you write another."
      >
        <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-3">
          <QuantityField
            name="lineLabel"
            label="Line it is made for"
            hint={`Its label. Line classes: ${LINE_CLASSES.map(({ labelLb }) => labelLb).join(', ')} lb.`}
            unit={shop.forceUnit}
            isOptional
            defaultValue={
              revision.lineLabelN === null ? undefined : plainDecimals(forceIn(shop.forceUnit, revision.lineLabelN))
            }
          />
          <SelectField
            name="lineType"
            label="Kind of line"
            hint="Lines of one label break at loads that differ by half."
            isOptional
            emptyLabel="not said"
            defaultValue={revision.lineType ?? ''}
            options={Object.entries(LINE_TYPE_WORDS).map(([value, label]) => ({ value, label }))}
          />
          <QuantityField
            name="fishMass"
            label="Fish that is swung out"
            hint="Only where fish are lifted on the line."
            unit={shop.massUnit}
            isOptional
            defaultValue={revision.fishMassG === null ? undefined : massInput(revision.fishMassG, shop.massUnit)}
          />
          <QuantityField
            name="knotShare"
            label="What the knot keeps"
            unit="%"
            isOptional
            defaultValue={number(percent(revision.knotShare))}
          />
          <QuantityField
            name="dragShare"
            label="Drag, of the label"
            unit="%"
            isOptional
            defaultValue={number(percent(revision.dragShare))}
          />
        </div>
      </Section>
      <Section
        title="Stations"
        lead="Height and width at places along the body, from the nose (0) to the tail. Ten are plenty; more where the shape changes fast."
      >
        <StationRows
          lengthUnit={shop.lengthUnit}
          stations={revision.profile.map((station) => ({
            x: length(station.xMm),
            height: length(station.halfHeightMm * 2),
            width: length(station.halfWidthMm * 2),
          }))}
        />
      </Section>
      <Section title="Ballast" lead="Weights in the body and on it. What is not said is not taken for none.">
        <BallastRows
          lengthSign={sign}
          massSign={shop.massUnit}
          hasNone={revision.ballast !== null && revision.ballast.length === 0}
          items={(revision.ballast ?? []).map((item) => ({
            name: item.name,
            metal: item.metal,
            massG: massInput(item.massG, shop.massUnit),
            xMm: length(item.xMm),
            zMm: signedLengthInput(item.zMm, shop.lengthUnit),
            place: item.isInside ? 'inside' : 'outside',
          }))}
        />
      </Section>
      <TextAreaField name="note" label="Note" isOptional maxLength={1000} defaultValue={revision.note} />
    </DraftForm>
  );
}

function percent(share: number | null): number | null {
  return share === null ? null : share * 100;
}
