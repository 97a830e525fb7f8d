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

const optionalFrom = z.union([emptyText, fromMinuteSchema], {
  error: 'Write a time of day as 18:30, or leave it empty.',
});
const optionalTo = z.union([emptyText, toMinuteSchema], { error: 'Write a time of day as 18:30, or leave it empty.' });
const dayFields = { onDate: calendarDaySchema, from: optionalFrom, to: optionalTo, reason: plainText(0, 120) };

/** A person's day that differs: away, or other hours than usual. */
export const benchExceptionFormSchema = z.strictObject(dayFields).superRefine((day, context) => {
  needsBothOrNone(day, 'Write both times, or neither for a day away.', context);
});
export type BenchExceptionInput = z.infer<typeof benchExceptionFormSchema>;

/** What a day of the whole shop that differs does to the hours of those who work in it. */
export const SHOP_DAY_KINDS = ['shut', 'within', 'beside'] as const;

/** A day of the whole shop that differs: shut, open within some hours only, or open for everybody beside their own. */
export const shopDayFormSchema = z
  .strictObject({ ...dayFields, kind: z.enum(SHOP_DAY_KINDS, 'Choose what is different.') })
  .superRefine((day, context) => {
    needsBothOrNone(day, 'Write both times.', context);
    if (day.kind === 'shut' && day.from !== null) {
      const message = 'A day on which the shop is shut has no times. Leave both empty.';
      context.addIssue({ code: 'custom', path: ['from'], message });
    }
    if (day.kind !== 'shut' && day.from === null) {
      context.addIssue({ code: 'custom', path: ['from'], message: 'Write from when to when.' });
    }
  })
  .transform(({ kind, ...day }) => ({ ...day, opensHours: kind === 'beside' }));

function needsBothOrNone(
  day: { readonly from: number | null; readonly to: number | null },
  message: string,
  context: z.core.$RefinementCtx,
): void {
  if ((day.from === null) === (day.to === null)) return;
  context.addIssue({ code: 'custom', path: [day.from === null ? 'from' : 'to'], message });
}
