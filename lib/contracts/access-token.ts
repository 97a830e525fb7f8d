import { z } from 'zod';
import { optionalIdSchema } from './model-forms';
import { plainText } from './plain-text';
import { optionalDaySchema } from './wall-time';

/** What a token may do. */
export const TOKEN_SCOPES = ['readings:write', 'events:write', 'calendar:read'] as const;
export type TokenScope = (typeof TOKEN_SCOPES)[number];

/** A new token for a logger, a script or a calendar. */
export const tokenFormSchema = z
  .strictObject({
    name: plainText(1, 60),
    scope: z.enum(TOKEN_SCOPES, { error: 'Choose what it may do.' }),
    sensorId: optionalIdSchema,
    expiresOn: optionalDaySchema,
  })
  .superRefine(({ scope, sensorId }, context) => {
    if (scope === 'readings:write' && sensorId === null) {
      context.addIssue({ code: 'custom', path: ['sensorId'], message: 'Choose the sensor it writes for.' });
    }
  });
export type TokenInput = z.infer<typeof tokenFormSchema>;
