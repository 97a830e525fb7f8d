import { ActionForm } from '@/app/_ui/action-form';
import { QuantityField } from '@/app/_ui/field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { temperatureSign } from '@/app/_ui/unit-sign';
import { plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import type { ShopSettings } from '@/prisma/data/shop';
import { saveProfileAction } from '../actions';
import { PeriodRows } from './period-rows';

/** The usual week in setpoints, and how far the room may be from them. */
export function ProfileForm({ shop }: { readonly shop: ShopSettings }) {
  const sign = temperatureSign(shop.temperatureUnit);
  const temperature = (value: number) => temperatureInput(value, shop.temperatureUnit);
  const difference = (value: number) => plainDecimals(shop.temperatureUnit === 'F' ? value * 1.8 : value);
  return (
    <ActionForm action={saveProfileAction}>
      <div className="max-w-xs">
        <QuantityField
          name="otherwiseC"
          label="Outside all periods"
          hint="Nights, and days on which nobody heats."
          unit={sign}
          defaultValue={temperature(shop.temperatureProfile.otherwiseC)}
        />
      </div>
      <PeriodRows
        unit={sign}
        periods={shop.temperatureProfile.periods.map((period) => ({
          weekdays: period.weekdays,
          fromMinute: period.fromMinute,
          toMinute: period.toMinute,
          temperature: temperature(period.temperatureC),
        }))}
      />
      <div className="grid gap-5 sm:grid-cols-2 lg:grid-cols-4">
        <QuantityField
          name="profileTolerance"
          label="The week may be off by"
          hint="Up or down, on a usual day."
          unit={sign}
          defaultValue={difference(shop.profileToleranceC)}
        />
        <QuantityField
          name="sensorTolerance"
          label="A logger may be off by"
          hint="As its sheet says."
          unit={sign}
          defaultValue={difference(shop.sensorToleranceC)}
        />
        <QuantityField
          name="floorC"
          label="Coldest it ever gets"
          hint="What a silent logger may have missed."
          unit={sign}
          defaultValue={temperature(shop.floorC)}
        />
        <QuantityField
          name="ceilingC"
          label="Warmest it ever gets"
          unit={sign}
          defaultValue={temperature(shop.ceilingC)}
        />
      </div>
      <div>
        <SubmitButton>Save the usual week</SubmitButton>
      </div>
    </ActionForm>
  );
}
