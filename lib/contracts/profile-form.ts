import { z } from 'zod';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { numberText } from './number-text';
import { temperatureNeed } from './quantity-need';
import { quantityText } from './quantity-text';
import { MAX_PERIODS, SHOP_TEMPERATURE_C } from './temperature-profile';
import { fromMinuteSchema, toMinuteSchema, weekdaysSchema } from './wall-time';

/** The usual temperature of the shop over a week, and how far it may be off, as the form sends it. */
export function profileFormSchema(units: UnitChoice) {
  const temperature = quantityText(temperatureNeed(units, SHOP_TEMPERATURE_C.least, SHOP_TEMPERATURE_C.most));
  // A difference in the shop's degrees.
  const perDegree = units.temperatureUnit === 'F' ? 1 / 1.8 : 1;
  const difference = (mostC: number) =>
    numberText(0, Math.round(mostC / perDegree)).transform((degrees) => degrees * perDegree);
  return z
    .strictObject({
      otherwiseC: temperature,
      periods: z
        .array(
          z.strictObject({
            weekdays: weekdaysSchema,
            from: fromMinuteSchema,
            to: toMinuteSchema,
            temperatureC: temperature,
          }),
        )
        .max(MAX_PERIODS, `Keep it to ${MAX_PERIODS} periods.`)
        .default([]),
      profileTolerance: difference(15),
      floorC: temperature,
      ceilingC: temperature,
      sensorTolerance: difference(5),
    })
    .superRefine(({ otherwiseC, periods, floorC, ceilingC }, context) => {
      const say = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
      if (floorC >= ceilingC) say(['ceilingC'], 'The warmest must be above the coldest.');
      const isOutside = (temperatureC: number) => temperatureC < floorC || temperatureC > ceilingC;
      const message = 'This lies outside the coldest and the warmest below.';
      if (isOutside(otherwiseC)) say(['otherwiseC'], message);
      for (const [index, period] of periods.entries()) {
        if (isOutside(period.temperatureC)) say(['periods', index, 'temperatureC'], message);
      }
    });
}
export type ProfileInput = z.infer<ReturnType<typeof profileFormSchema>>;
