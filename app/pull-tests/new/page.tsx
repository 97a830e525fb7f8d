import { randomBytes, randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { CheckField, RadioField } from '@/app/_ui/choice-field';
import { QuantityField, TextAreaField, TextField } from '@/app/_ui/field';
import { Card, Page, Section } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { lengthSign } from '@/app/_ui/unit-sign';
import { materialOptions } from '@/app/models/_components/material-options';
import { db } from '@/prisma/client';
import { listMaterialChoices } from '@/prisma/data/materials';
import { PullCautions } from '../_components/pull-cautions';
import { makePullSeriesAction } from '../actions';
import { MaterialFields } from './_components/material-fields';
import { TellDepths } from './_components/tell-depths';

export const metadata: Metadata = { title: 'New pull series' };

/** Usual sizes of a first series: five depths about half an inch, on a board that takes them. Chosen. */
const USUAL = {
  inch: {
    depths: '1/4, 3/8, 1/2, 5/8, 3/4',
    wire: '.041',
    bit: '.094',
    board: ['12', '4', '1 1/2', '1', '1 1/4'],
    tell: ['1/2', '3/4'],
  },
  mm: {
    depths: '6, 9, 12, 15, 18',
    wire: '1',
    bit: '2.4',
    board: ['300', '100', '38', '25', '30'],
    tell: ['12', '18'],
  },
} as const;

export default async function NewPullSeriesPage() {
  const [shop, materials] = await Promise.all([currentShop(), db().then(listMaterialChoices)]);
  const unit = lengthSign(shop.lengthUnit);
  const usual = USUAL[shop.lengthUnit];
  return (
    <Page
      title="New pull series"
      lead="One specimen of every depth in every mix: so a weak mix shows, and cannot pass for a weak depth."
      up={{ href: '/pull-tests', label: 'Pull tests' }}
    >
      <Section
        title="How many mixes?"
        lead="Mixes are the repeats. Three is the least from which anything can be said."
      >
        <TellDepths unit={unit} shallow={usual.tell[0]} deep={usual.tell[1]} />
      </Section>
      <Section title="The series">
        <Card className="max-w-3xl">
          <ActionForm action={makePullSeriesAction}>
            {/* Sent twice, the form makes one series. */}
            <input type="hidden" name="seriesId" value={randomUUID()} />
            <TextField name="name" label="Name" hint="What you want to know, as you would say it." maxLength={100} />
            <div className="grid gap-5 sm:grid-cols-2">
              <TextField
                name="depths"
                label={`Depths of shank in glue (${unit})`}
                hint="Three or more, with commas between them."
                defaultValue={usual.depths}
                maxLength={300}
              />
              <TextField
                name="mixes"
                label="Mixes"
                hint="Each mix sets one specimen of every depth. At least three."
                inputMode="numeric"
                defaultValue="3"
                maxLength={3}
              />
            </div>
            <MaterialFields
              woods={materialOptions(materials, ['wood'])}
              adhesives={materialOptions(materials, ['adhesive'])}
              wires={materialOptions(materials, ['wire'])}
            />
            <div className="grid gap-5 sm:grid-cols-2">
              <QuantityField name="wireDiameter" label="Diameter of the wire" unit={unit} defaultValue={usual.wire} />
              <QuantityField name="bitDiameter" label="Diameter of the bit" unit={unit} defaultValue={usual.bit} />
            </div>
            <QuantityField
              name="demand"
              label="Load the joint shall carry"
              hint="Factor of safety included. The answer is then the least depth that carries it."
              unit={shop.forceUnit}
              isOptional
            />
            <RadioField
              name="question"
              legend="Asked"
              defaultValue="anchorage"
              options={[
                { value: 'anchorage', label: 'What wood and glue hold together' },
                { value: 'bond', label: 'What the glue line holds' },
              ]}
              hint="When the wood splits, that is the answer to the first, and only “at least” for the second."
            />
            <RadioField
              name="order"
              legend="Pulled"
              defaultValue="all"
              options={[
                { value: 'all', label: 'All together, in random order' },
                { value: 'mix-by-mix', label: 'Mix by mix, as they cure' },
              ]}
            />
            <TextField
              name="seed"
              label="Seed of the random order"
              hint="The order and the places on the board are drawn from it. With the same seed anyone can draw them again."
              defaultValue={randomBytes(6).toString('hex')}
              maxLength={80}
            />
            <fieldset className="grid gap-4 border-t border-line pt-4">
              <legend className="sr-only">Test board</legend>
              <CheckField name="hasBoard" label="Draw the places on a test board" defaultChecked />
              <div className="grid gap-5 sm:grid-cols-3">
                <QuantityField name="boardLength" label="Length" unit={unit} defaultValue={usual.board[0]} />
                <QuantityField name="boardWidth" label="Width" unit={unit} defaultValue={usual.board[1]} />
                <QuantityField name="boardThickness" label="Thickness" unit={unit} defaultValue={usual.board[2]} />
                <QuantityField
                  name="boardEdge"
                  label="Hole to edge"
                  hint="From the middle of the hole."
                  unit={unit}
                  defaultValue={usual.board[3]}
                />
                <QuantityField
                  name="boardSpacing"
                  label="Hole to hole"
                  hint="From middle to middle."
                  unit={unit}
                  defaultValue={usual.board[4]}
                />
              </div>
            </fieldset>
            <TextAreaField name="note" label="Note" isOptional maxLength={1000} />
            <div>
              <SubmitButton pendingText="Making…">Make the series</SubmitButton>
            </div>
          </ActionForm>
        </Card>
      </Section>
      <PullCautions step="making" />
    </Page>
  );
}
