import { z } from 'zod';
import type { Weekday } from '@/lib/units/zoned-time';
import { isCalendarDay, WEEKDAYS } from '@/lib/units/zoned-time';

const NEED_TIME = 'Write a time of day as 18:30.';

/** A time of day as a browser sends it, `HH:MM`, in minutes since 00:00. */
const timeOfDaySchema = z
  .string()
  .trim()
  .regex(/^([01]?\d|2[0-3]):[0-5]\d$|^24:00$/, NEED_TIME)
  .transform((text) => {
    const [hours = 0, minutes = 0] = text.split(':').map(Number);
    return hours * 60 + minutes;
  });

/** A time at which something begins: 24:00 is the next day's 0:00 and would not say which day is meant. */
export const fromMinuteSchema = timeOfDaySchema.refine((minute) => minute < 1440, NEED_TIME);

/** A time at which something ends; midnight is the end of the day. */
export const toMinuteSchema = timeOfDaySchema.transform((minute) => (minute === 0 ? 1440 : minute));

/** Ticked days of the week, ISO 8601 numbers as text. */
export const weekdaysSchema = z
  .array(z.string(), { error: 'Tick at least one day.' })
  .transform((texts): Weekday[] => WEEKDAYS.filter((day) => texts.includes(String(day))))
  .refine((days) => days.length > 0, 'Tick at least one day.');

const NEED_DAY = 'Write the day as year-month-day, for example 2026-05-31.';

/** A day of the calendar, YYYY-MM-DD. */
export const calendarDaySchema = z.string().trim().refine(isCalendarDay, NEED_DAY);

/** A day of the calendar, or null where nothing was written. */
export const optionalDaySchema = z
  .string()
  .trim()
  .refine((text) => text === '' || isCalendarDay(text), NEED_DAY)
  .transform((text) => (text === '' ? null : text));
