import type { Metadata } from 'next';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { QuantityField } from '@/app/_ui/field';
import { Page, Section } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { lengthSign, temperatureSign } from '@/app/_ui/unit-sign';
import { DEFAULT_RULE_FIGURES, type RuleFigures } from '@/lib/spec/rule-figures';
import { lengthInput, plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { saveRuleFiguresAction } from '../actions';

export const metadata: Metadata = { title: "The shop's figures" };

type FigureKind = 'length' | 'temperature' | 'percent' | 'days' | 'plain';

interface FigureField {
  readonly name: Exclude<keyof RuleFigures, 'combination'>;
  readonly label: string;
  readonly hint: string;
  readonly kind: FigureKind;
}

const SAFETY: readonly FigureField[] = [
  {
    name: 'requiredFactor',
    label: 'Factor',
    hint: 'Lower value of an anchor over the greatest load of its line. 1.95: 1.3 on strength times 1.5 on load, from memory of EN 1995 and EN 1990.',
    kind: 'plain',
  },
  {
    name: 'lowerShare',
    label: 'Lower value: joints let fall below it',
    hint: 'The fifth percentile is usual: one joint in twenty.',
    kind: 'percent',
  },
  { name: 'surgeFactor', label: 'Peak over drag', hint: 'When a fish surges. Chosen: 1.5.', kind: 'plain' },
  { name: 'liftFactor', label: 'Peak over weight', hint: 'When a fish is swung out. Chosen: 2.', kind: 'plain' },
];

const HOLES: readonly FigureField[] = [
  {
    name: 'leastEmbedmentMm',
    label: 'Least embedment',
    hint: 'Half an inch: common practice, no source.',
    kind: 'length',
  },
  { name: 'incrementMm', label: 'Depths in steps of', hint: 'Least depths are rounded up to it.', kind: 'length' },
  { name: 'drillSlackMm', label: 'Hole under the shank', hint: 'So much void is let pass.', kind: 'length' },
  { name: 'woodBelowMm', label: 'Wood under a hole', hint: 'To be left to the other side.', kind: 'length' },
  {
    name: 'throughWireBelowGravity',
    label: 'Through-wire below specific gravity',
    hint: 'Woods lighter than this hold no glued anchor.',
    kind: 'plain',
  },
];

const EVIDENCE: readonly FigureField[] = [
  {
    name: 'serviceTemperatureC',
    label: 'Warmest a lure is kept',
    hint: 'A closed car is hotter.',
    kind: 'temperature',
  },
  { name: 'calibrationMaxAgeDays', label: 'Pulls count as fresh for', hint: '', kind: 'days' },
  {
    name: 'saturationMm',
    label: 'Depth over which a bond saturates',
    hint: 'Plausible from 1/2 to 1 1/2 in; pulls at three depths tell.',
    kind: 'length',
  },
  {
    name: 'endGrainBearing',
    label: 'Bearing in end grain, share of across',
    hint: 'Weak evidence: drafts go down to 0.1.',
    kind: 'plain',
  },
];

/** What the shop asks of every spec. */
export default async function RuleFiguresPage() {
  const shop = await currentShop();
  const { ruleFigures } = shop;
  const fields = (of: readonly FigureField[]) => (
    <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-3">
      {of.map((field) => (
        <QuantityField
          key={field.name}
          name={field.name}
          label={field.label}
          hint={`${field.hint} Before anything was set: ${shown(field, DEFAULT_RULE_FIGURES, shop)} ${sign(field.kind, shop)}`.trim()}
          unit={sign(field.kind, shop)}
          defaultValue={shown(field, ruleFigures, shop)}
        />
      ))}
    </div>
  );
  return (
    <Page
      title="The shop's figures"
      lead="Models are judged by them from the moment they are saved. Open batches keep what they took along, and the Rules page says what is found otherwise."
      up={{ href: '/rules', label: 'Rules, without saving' }}
    >
      <ActionForm action={saveRuleFiguresAction} className="grid gap-10">
        <Section title="How sure">{fields(SAFETY)}</Section>
        <Section title="Holes">{fields(HOLES)}</Section>
        <Section title="What the estimates rest on">
          {fields(EVIDENCE)}
          <SelectField
            name="combination"
            label="Straight and sideways load together"
            options={[
              { value: 'quadratic', label: 'by the sum of their squares' },
              { value: 'hankinson', label: "by Hankinson's formula" },
            ]}
            defaultValue={ruleFigures.combination}
          />
        </Section>
        <div className="flex flex-wrap gap-3 border-t-2 border-ink pt-4">
          <SubmitButton>Save the figures</SubmitButton>
          <ButtonLink href="/rules" weight="quiet">
            Leave without saving
          </ButtonLink>
        </div>
      </ActionForm>
    </Page>
  );
}

function shown({ name, kind }: FigureField, figures: RuleFigures, units: UnitChoice): string {
  const value = figures[name];
  switch (kind) {
    case 'length':
      return lengthInput(value, units.lengthUnit);
    case 'temperature':
      return temperatureInput(value, units.temperatureUnit);
    case 'percent':
      return plainDecimals(value * 100);
    case 'days':
    case 'plain':
      return plainDecimals(value);
  }
}

function sign(kind: FigureKind, units: UnitChoice): string {
  switch (kind) {
    case 'length':
      return lengthSign(units.lengthUnit);
    case 'temperature':
      return temperatureSign(units.temperatureUnit);
    case 'percent':
      return '%';
    case 'days':
      return 'days';
    case 'plain':
      return '';
  }
}
