import { z } from 'zod';
import type { TemperatureProfile } from '@/lib/cure/temperature-profile';
import { WEEKDAYS } from '@/lib/units/zoned-time';
import type { BothWays } from './same-type';

/** Temperatures that a workshop with people in it, or shut for the winter, can have, degC. */
export const SHOP_TEMPERATURE_C = { least: -30, most: 50 } as const;

/** Most periods of one profile. */
export const MAX_PERIODS = 30;

const setpointC = z.number().min(SHOP_TEMPERATURE_C.least).max(SHOP_TEMPERATURE_C.most);

const periodSchema = z.strictObject({
  weekdays: z.array(z.literal(WEEKDAYS)).min(1).max(7).readonly(),
  fromMinute: z.int().min(0).max(1439),
  toMinute: z.int().min(1).max(1440),
  temperatureC: setpointC,
});

/** The weekly temperature profile as it is stored with the shop. */
export const temperatureProfileSchema = z.strictObject({
  otherwiseC: setpointC,
  periods: z.array(periodSchema).max(MAX_PERIODS).readonly(),
});

/** Fails to compile when the schema and the type in lib/cure drift apart. @lintignore */
export type TemperatureProfileAgrees = BothWays<z.infer<typeof temperatureProfileSchema>, TemperatureProfile>;
