import { RadioField } from '@/app/_ui/choice-field';
import { QuantityField, TextField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { OwnSource } from './own-source';
import type { SheetFieldsProps } from './ready-fields';

/** Ratio, densities and the largest cup. */
export function MixingFields({ text, units }: SheetFieldsProps) {
  return (
    <Section
      title="Mixing"
      lead="For a two-part product. A ratio by volume is not one by mass: the densities tell them apart."
    >
      <div className="grid gap-x-5 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        <div>
          <TextField
            name="ratio.partsA"
            label="Parts of A (resin)"
            isOptional
            maxLength={20}
            defaultValue={text.ratio.partsA}
          />
          <OwnSource figure="ratio" text={text} />
        </div>
        <TextField
          name="ratio.partsB"
          label="Parts of B (hardener)"
          isOptional
          maxLength={20}
          defaultValue={text.ratio.partsB}
        />
        <RadioField
          name="ratio.basis"
          legend="By"
          options={[
            { value: 'mass', label: 'mass' },
            { value: 'volume', label: 'volume' },
          ]}
          defaultValue={text.ratio.basis}
        />
        <QuantityField
          name="maxMassG"
          label="Largest cup"
          hint="The most the sheet lets you mix at once."
          unit={units.massUnit}
          isOptional
          defaultValue={text.maxMassG}
        />
        <div>
          <TextField
            name="densityA"
            label="Density of A, g/mL"
            isOptional
            maxLength={20}
            defaultValue={text.densityA}
          />
          <OwnSource figure="density" text={text} />
        </div>
        <TextField name="densityB" label="Density of B, g/mL" isOptional maxLength={20} defaultValue={text.densityB} />
      </div>
    </Section>
  );
}
