import { z } from 'zod';
import type { Instant } from '@/lib/units/instant';
import { plainText } from './plain-text';

/** Most readings of one request. Chosen: a week of one-minute readings; a longer log is a file to import. */
export const MOST_READINGS = 10_000;

/** Numbers below this are Unix seconds, above it milliseconds: the seconds reach the year 5138. Chosen. */
const MILLISECONDS_FROM = 100_000_000_000;
const EARLIEST_AT = Date.UTC(1970, 0, 1);
const LATEST_AT = Date.UTC(2100, 0, 1);

/** A reading as it was sent, in the units we keep. */
export interface ReadingInput {
  readonly at: Instant;
  readonly temperatureC: number;
  readonly humidityPct: number | null;
  /** Name of the sensor where the sender gave one: it must be the token's. */
  readonly sensor: string | null;
}

const stampNeed =
  'Write the time with its zone, as 2026-03-10T18:15:00Z or 2026-03-10T13:15:00-05:00, or as Unix seconds or milliseconds.';

const at = z
  .union(
    [
      z.iso.datetime({ offset: true, error: stampNeed }).transform((text) => Date.parse(text)),
      z
        .number({ error: stampNeed })
        .transform((value) => Math.round(value >= MILLISECONDS_FROM ? value : value * 1000)),
    ],
    { error: stampNeed },
  )
  .refine((instant) => instant >= EARLIEST_AT && instant < LATEST_AT, 'The time must lie between 1970 and 2099.');

/** -40 to 85 degC: what a workshop's sensor can measure (rule 8 of section 7 of the reference pack). */
const celsiusNeed = 'A temperature is a number from -40 to 85 degC.';
const fahrenheitNeed = 'A temperature is a number from -40 to 185 degF.';
const humidityNeed = 'Relative humidity is a number from 0 to 100.';

const readingSchema = z
  .strictObject({
    at,
    temperatureC: z.number({ error: celsiusNeed }).min(-40, celsiusNeed).max(85, celsiusNeed).optional(),
    temperatureF: z.number({ error: fahrenheitNeed }).min(-40, fahrenheitNeed).max(185, fahrenheitNeed).optional(),
    humidityPct: z.number({ error: humidityNeed }).min(0, humidityNeed).max(100, humidityNeed).nullish(),
    sensor: plainText(1, 60).optional(),
  })
  .superRefine(({ temperatureC, temperatureF }, context) => {
    if ((temperatureC === undefined) === (temperatureF === undefined)) {
      const message = 'Give the temperature once, as temperatureC or as temperatureF.';
      context.addIssue({ code: 'custom', path: ['temperatureC'], message });
    }
  })
  .transform(
    ({ at, temperatureC, temperatureF, humidityPct, sensor }): ReadingInput => ({
      at,
      // Rounded to a millionth where it is converted, as files are, so that both ways in give the same reading.
      temperatureC: temperatureC ?? Math.round((((temperatureF ?? 0) - 32) / 1.8) * 1e6) / 1e6,
      humidityPct: humidityPct ?? null,
      sensor: sensor ?? null,
    }),
  );

const listSchema = z
  .array(readingSchema)
  .min(1, 'Send one reading at least.')
  .max(MOST_READINGS, `Send at most ${MOST_READINGS} readings at once; a longer log is imported as a file in Shop.`);

/** What is wrong with a body of readings: where, and what to do. */
interface ReadingIssue {
  /** `2.temperatureC` in a list, `temperatureC` in a single reading; empty: the body as a whole. */
  readonly path: string;
  readonly message: string;
}

export type ReadingsParsed =
  | { readonly ok: true; readonly readings: readonly ReadingInput[] }
  | { readonly ok: false; readonly issues: readonly ReadingIssue[] };

/** One reading or a list of them, read from JSON. All that is wrong comes back, each with its place. */
export function parseReadings(body: unknown): ReadingsParsed {
  const parsed = Array.isArray(body) ? listSchema.safeParse(body) : readingSchema.safeParse(body);
  if (!parsed.success) {
    return { ok: false, issues: parsed.error.issues.map(({ path, message }) => ({ path: path.join('.'), message })) };
  }
  return { ok: true, readings: Array.isArray(parsed.data) ? parsed.data : [parsed.data] };
}
