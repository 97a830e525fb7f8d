import { z } from 'zod';
import { BALLAST_METALS, type BallastItem } from '@/lib/geometry/ballast';
import { MAX_BODY_MM } from './body-profile';
import { plainText } from './plain-text';
import type { BothWays } from './same-type';

export const MAX_BALLAST = 30;
export const MAX_BALLAST_G = 2_000;

/** The weights in a body and on it, as they are stored. */
export const ballastSchema = z
  .array(
    z.strictObject({
      name: plainText(0, 60),
      metal: z.enum(BALLAST_METALS),
      massG: z.number().positive().max(MAX_BALLAST_G),
      xMm: z.number().min(0).max(MAX_BODY_MM),
      zMm: z.number().min(-MAX_BODY_MM).max(MAX_BODY_MM),
      isInside: z.boolean(),
    }),
  )
  .max(MAX_BALLAST)
  .readonly();

/** Fails to compile when the schema and the type in lib/geometry drift apart. @lintignore */
export type BallastAgrees = BothWays<z.infer<typeof ballastSchema>, readonly BallastItem[]>;
