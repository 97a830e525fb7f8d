import { z } from 'zod';
import { plainText } from './plain-text';
import { calendarDaySchema, fromMinuteSchema, toMinuteSchema, weekdaysSchema } from './wall-time';

/** Most stretches of bench hours of one person. */
export const MAX_STRETCHES = 30;

/** When a person can attend, week by week, as the form sends it. */
export const benchHoursFormSchema = z.strictObject({
  stretches: z
    .array(
      z.strictObject({
        weekdays: weekdaysSchema,
        from: fromMinuteSchema,
        to: toMinuteSchema,
      }),
    )
    .max(MAX_STRETCHES, `Keep it to ${MAX_STRETCHES} stretches.`)
    .default([]),
});
export type BenchHoursInput = z.infer<typeof benchHoursFormSchema>;

const emptyText = z.literal('').transform(() => null);

/** A day that differs: away, or other hours than usual. */
export const benchExceptionFormSchema = z
  .strictObject({
    onDate: calendarDaySchema,
    from: z.union([emptyText, fromMinuteSchema], { error: 'Write a time of day as 18:30, or leave it empty.' }),
    to: z.union([emptyText, toMinuteSchema], { error: 'Write a time of day as 18:30, or leave it empty.' }),
    reason: plainText(0, 120),
  })
  .superRefine((day, context) => {
    if ((day.from === null) !== (day.to === null)) {
      const path = [day.from === null ? 'from' : 'to'];
      context.addIssue({ code: 'custom', path, message: 'Write both times, or neither for a day away.' });
    }
  });
export type BenchExceptionInput = z.infer<typeof benchExceptionFormSchema>;
