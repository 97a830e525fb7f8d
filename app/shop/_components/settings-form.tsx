import { ActionForm } from '@/app/_ui/action-form';
import { RadioField } from '@/app/_ui/choice-field';
import { TextField } from '@/app/_ui/field';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { ShopSettings } from '@/prisma/data/shop';
import { saveShopSettingsAction } from '../actions';

/** Name, time zone and units. */
export function SettingsForm({ shop }: { readonly shop: ShopSettings }) {
  return (
    <ActionForm action={saveShopSettingsAction}>
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField name="name" label="Name of the workshop" maxLength={80} defaultValue={shop.name} />
        <TextField
          name="timeZone"
          label="Time zone"
          hint="Region and city. Bench hours and the profile follow its clock changes."
          maxLength={60}
          list="time-zones"
          defaultValue={shop.timeZone}
        />
        <RadioField
          name="lengthUnit"
          legend="Lengths"
          defaultValue={shop.lengthUnit}
          options={[
            { value: 'inch', label: 'inches and fractions' },
            { value: 'mm', label: 'millimetres' },
          ]}
        />
        <RadioField
          name="temperatureUnit"
          legend="Temperatures"
          defaultValue={shop.temperatureUnit}
          options={[
            { value: 'F', label: '°F' },
            { value: 'C', label: '°C' },
          ]}
        />
        <RadioField
          name="massUnit"
          legend="Masses"
          defaultValue={shop.massUnit}
          options={[
            { value: 'g', label: 'grams' },
            { value: 'oz', label: 'ounces' },
          ]}
        />
        <RadioField
          name="forceUnit"
          legend="Forces"
          defaultValue={shop.forceUnit}
          options={[
            { value: 'lbf', label: 'pounds' },
            { value: 'N', label: 'newtons' },
          ]}
        />
        <TextField
          name="currency"
          label="Currency"
          hint="Three letters, such as USD or EUR."
          maxLength={3}
          defaultValue={shop.currency}
        />
      </div>
      <datalist id="time-zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <div>
        <SubmitButton>Save the workshop</SubmitButton>
      </div>
    </ActionForm>
  );
}
