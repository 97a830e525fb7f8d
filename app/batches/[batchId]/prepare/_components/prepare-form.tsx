import { ActionForm } from '@/app/_ui/action-form';
import { RadioField } from '@/app/_ui/choice-field';
import { TextField } from '@/app/_ui/field';
import type { FormAction } from '@/app/_ui/form-state';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { PrepareChoices } from '@/lib/prepare/preparation';
import { lengthInput, plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface PrepareFormProps {
  readonly action: FormAction;
  readonly choices: PrepareChoices;
  readonly units: UnitChoice;
  readonly roomSource: string;
  readonly isAgain: boolean;
}

/** What is chosen before a glue-up. */
export function PrepareForm({ action, choices, units, roomSource, isAgain }: PrepareFormProps) {
  return (
    <ActionForm action={action}>
      <RadioField
        name="arrangement"
        legend="Joints and mixes"
        defaultValue={choices.arrangement}
        options={[
          {
            value: 'spread',
            label: 'Spread: the joints of a piece go to different mixes, so one bad mix never holds a whole piece',
          },
          {
            value: 'traceable',
            label: 'Together: all joints of a piece come from one mix, so a bad mix names its pieces',
          },
        ]}
      />
      <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-3">
        <TextField
          name="temperatureC"
          label="Temperature of the parts"
          defaultValue={temperatureInput(choices.temperatureC, units.temperatureUnit)}
          hint={roomSource}
        />
        <SelectField
          name="scaleStepG"
          label="The scale shows steps of"
          defaultValue={String(choices.scaleStepG)}
          options={['0.01', '0.1', '0.5', '1'].map((value) => ({ value, label: `${value} g` }))}
        />
        <TextField
          name="people"
          label="People setting joints from one cup"
          inputMode="numeric"
          defaultValue={String(choices.people)}
        />
        <TextField
          name="secondsPerJoint"
          label="Seconds for one joint"
          inputMode="decimal"
          defaultValue={plainDecimals(choices.secondsPerJoint)}
        />
        <TextField
          name="secondsPerCoat"
          label="Seconds for one coat"
          inputMode="decimal"
          defaultValue={plainDecimals(choices.secondsPerCoat)}
        />
        <TextField
          name="stirSeconds"
          label="Seconds of stirring"
          inputMode="decimal"
          defaultValue={plainDecimals(choices.stirSeconds)}
        />
        <TextField
          name="filmMm"
          label="Film of one coat, mm"
          inputMode="decimal"
          defaultValue={plainDecimals(choices.filmMm)}
          hint="0.1 to 0.3 is common practice."
        />
        <TextField
          name="kerfMm"
          label="Lost at each cut of wire, mm"
          inputMode="decimal"
          defaultValue={plainDecimals(choices.kerfMm)}
          hint="0 for a cutter that shears."
        />
        <TextField
          name="reuseMm"
          label="Keep offcuts from"
          defaultValue={lengthInput(choices.reuseMm, units.lengthUnit)}
        />
        <TextField
          name="rodMm"
          label="Length of one rod"
          isOptional
          defaultValue={choices.rodMm === null ? '' : lengthInput(choices.rodMm, units.lengthUnit)}
          hint="Where a lot of wire is a bundle of rods. Empty: each lot is one coil."
        />
      </div>
      <div>
        <SubmitButton pendingText="Planning…">{isAgain ? 'Prepare anew' : 'Prepare'}</SubmitButton>
      </div>
    </ActionForm>
  );
}
