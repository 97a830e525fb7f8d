/** An instant in UTC, as whole milliseconds since 1970-01-01T00:00Z. Fields that hold one end in `At`. */
export type Instant = number;

/** Exact lengths of time in milliseconds. A day is not among them: a calendar day may have 23 or 25 hours. */
export const SECOND_MS = 1_000;
export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
