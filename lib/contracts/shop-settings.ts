import { z } from 'zod';
import { isTimeZone } from '@/lib/units/time-zone';
import { FORCE_UNITS, LENGTH_UNITS, MASS_UNITS, TEMPERATURE_UNITS } from '@/lib/units/unit-choice';
import { idSchema, plainText } from './plain-text';

/** Name, zone and units of the shop, as the form sends them. */
export const shopSettingsFormSchema = z.strictObject({
  name: plainText(1, 80),
  timeZone: z
    .string()
    .trim()
    .refine(
      isTimeZone,
      'This is no time zone the computer knows. Write it as region/city, for example America/Chicago or Europe/Oslo.',
    ),
  lengthUnit: z.enum(LENGTH_UNITS, { error: 'Choose inches or millimetres.' }),
  temperatureUnit: z.enum(TEMPERATURE_UNITS, { error: 'Choose °C or °F.' }),
  massUnit: z.enum(MASS_UNITS, { error: 'Choose grams or ounces.' }),
  forceUnit: z.enum(FORCE_UNITS, { error: 'Choose newtons or pounds.' }),
  currency: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^[A-Z]{3}$/, 'Write the three letters of the currency, for example USD, EUR or SEK.'),
});
export type ShopSettingsInput = z.infer<typeof shopSettingsFormSchema>;

/** A person's name. */
export const personFormSchema = z.strictObject({ name: plainText(1, 60) });

/** A logger's name and where it hangs. */
export const sensorFormSchema = z.strictObject({ name: plainText(1, 60), place: plainText(0, 120) });
export type SensorInput = z.infer<typeof sensorFormSchema>;

/** Which sensor rules the cure clocks; empty: the profile. */
export const cureSensorFormSchema = z.strictObject({
  cureSensorId: z.union([z.literal('').transform(() => null), idSchema], { error: 'Choose a sensor of the list.' }),
});
