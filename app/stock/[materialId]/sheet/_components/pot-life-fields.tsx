import { TextField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { temperatureSign } from '@/app/_ui/unit-sign';
import { OwnSource } from './own-source';
import { PotLifeRows } from './pot-life-rows';
import type { SheetFieldsProps } from './ready-fields';

/** How long a cup can be used, as printed. */
export function PotLifeFields({ text, units }: SheetFieldsProps) {
  const { low, central, high } = text.massExponent;
  return (
    <Section
      title="Pot life"
      lead="A pot life means nothing without the mass in the cup, its temperature and what ended it. None for a one-part product."
    >
      <PotLifeRows
        points={text.potLife}
        massUnit={units.massUnit}
        temperatureUnit={temperatureSign(units.temperatureUnit)}
      />
      <OwnSource figure="potLife" text={text} />
      <details open={central !== ''}>
        <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
          How pot life follows the mass
        </summary>
        <p className="my-2 max-w-2xl text-sm text-ink-soft">
          Pot life falls with mass to the power b. Empty: taken from the masses above where there are several, else 0.2,
          between 0.05 and 0.4.
        </p>
        <div className="grid max-w-xl grid-cols-3 gap-4">
          <TextField name="massExponent.low" label="Lowest b" isOptional maxLength={20} defaultValue={low} />
          <TextField name="massExponent.central" label="Middle b" isOptional maxLength={20} defaultValue={central} />
          <TextField name="massExponent.high" label="Highest b" isOptional maxLength={20} defaultValue={high} />
        </div>
        <OwnSource figure="massExponent" text={text} />
      </details>
    </Section>
  );
}
