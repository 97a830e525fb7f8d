import { z } from 'zod';
import type { BodyProfile } from '@/lib/geometry/body-profile';
import type { BothWays } from './same-type';

/** Longest and thickest body that is taken, mm: a metre of lure is a slip of the unit. */
export const MAX_BODY_MM = 1_000;
export const MAX_STATIONS = 200;

const halfSize = z
  .number()
  .min(0)
  .max(MAX_BODY_MM / 2);

/** A body's profile as it is stored: stations from the nose to the tail, each further than the one before. */
export const bodyProfileSchema = z
  .array(
    z.strictObject({
      xMm: z.number().min(0).max(MAX_BODY_MM),
      halfHeightMm: halfSize,
      halfWidthMm: halfSize,
    }),
  )
  .max(MAX_STATIONS)
  .readonly();

/** Fails to compile when the schema and the type in lib/geometry drift apart. @lintignore */
export type BodyProfileAgrees = BothWays<z.infer<typeof bodyProfileSchema>, BodyProfile>;
