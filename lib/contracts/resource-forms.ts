import { z } from 'zod';
import { plainText } from './plain-text';
import { calendarDaySchema, fromMinuteSchema, toMinuteSchema } from './wall-time';

/** What takes up places in the shop. */
export const RESOURCE_KINDS = ['rotator', 'rack', 'clamps', 'booth', 'other'] as const;
export type ResourceKind = (typeof RESOURCE_KINDS)[number];

/** Most places of one resource. Chosen: a wall of racks. */
const MOST_PLACES = 2_000;

const NEED_PLACES = `Write how many places: a whole number from 0 to ${MOST_PLACES}.`;
const placesSchema = z
  .string()
  .trim()
  .regex(/^\d{1,4}$/, NEED_PLACES)
  .transform(Number)
  .pipe(z.int().max(MOST_PLACES, NEED_PLACES));

const NEED_TIME = 'Write a time of day as 18:30, or leave it empty.';
const emptyText = z.literal('').transform(() => null);

/** A resource as its form sends it; without hours it can be used around the clock. */
export const resourceFormSchema = z
  .strictObject({
    name: plainText(1, 60),
    kind: z.enum(RESOURCE_KINDS, { error: 'Choose what it is.' }),
    capacity: placesSchema.refine((places) => places > 0, 'It has at least one place.'),
    openFrom: z.union([emptyText, fromMinuteSchema], { error: NEED_TIME }),
    openTo: z.union([emptyText, toMinuteSchema], { error: NEED_TIME }),
  })
  .superRefine(({ openFrom, openTo }, context) => {
    const say = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
    if ((openFrom === null) !== (openTo === null)) {
      say(openFrom === null ? 'openFrom' : 'openTo', 'Write both times, or neither for around the clock.');
    } else if (openFrom !== null && openTo !== null && openTo <= openFrom) {
      say('openTo', 'It closes after it opens, on the same day.');
    }
  });
export type ResourceInput = z.infer<typeof resourceFormSchema>;

/** Days on which a resource has another number of places. */
export const resourceChangeFormSchema = z
  .strictObject({
    fromOn: calendarDaySchema,
    toOn: calendarDaySchema,
    capacity: placesSchema,
    reason: plainText(0, 120),
  })
  .superRefine(({ fromOn, toOn }, context) => {
    if (toOn < fromOn)
      context.addIssue({ code: 'custom', path: ['toOn'], message: 'The last day is not before the first.' });
  });
export type ResourceChangeInput = z.infer<typeof resourceChangeFormSchema>;
