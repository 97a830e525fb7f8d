import { z } from 'zod';
import { isTimeZone } from '@/lib/units/time-zone';
import { idSchema, plainText } from './plain-text';

/** What a maker answers, or sets against what was understood, before a logger's file is taken in. */
export const importAnswersSchema = z.strictObject({
  dayOrder: z
    .enum(['day-first', 'month-first'], { error: 'Say whether the day or the month comes first.' })
    .exactOptional(),
  unit: z.enum(['C', 'F', 'K'], { error: 'Say in which unit the temperatures are.' }).exactOptional(),
  decimal: z.enum(['point', 'comma'], { error: 'Say what the comma means.' }).exactOptional(),
  temperatureColumn: z.int('Choose the column of the temperature.').min(0).max(255).exactOptional(),
  firstYear: z
    .int('Write the year of the first row, as 2026.')
    .min(1970, 'Write the year of the first row, as 2026.')
    .max(2099, 'Write the year of the first row, as 2026.')
    .exactOptional(),
  clock: z
    .enum(['place', 'standard-all-year'], { error: 'Say whether the logger follows summer time.' })
    .exactOptional(),
  timeZone: z
    .string()
    .trim()
    .refine(isTimeZone, 'Write the zone as region/city, for example America/Chicago or Europe/Oslo.')
    .exactOptional(),
});

/** Which sensor the readings are of: one that is there, or a new one. */
export type ImportTarget =
  | { readonly sensorId: string }
  | { readonly newSensor: { readonly name: string; readonly place: string } };

const CHOOSE_SENSOR = 'Choose the sensor that this log is of, or name a new one.';

export const importTargetSchema = z
  .strictObject({
    sensorId: idSchema.exactOptional(),
    newSensor: z.strictObject({ name: plainText(1, 60), place: plainText(0, 120) }).exactOptional(),
  })
  .transform(({ sensorId, newSensor }, context): ImportTarget => {
    if (sensorId !== undefined && newSensor === undefined) return { sensorId };
    if (newSensor !== undefined && sensorId === undefined) return { newSensor };
    context.addIssue({ code: 'custom', path: ['sensorId'], message: CHOOSE_SENSOR });
    return z.NEVER;
  });

/** Name of the file as the device has it; only shown and kept. */
export const importFileNameSchema = plainText(1, 200);
