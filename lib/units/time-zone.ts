/**
 * Whether the platform knows a time zone by this IANA name (`America/Chicago`, `Europe/London`, `UTC`).
 * A bare offset such as `+05:00` is refused: it has no clock changes, and a shop means a place.
 */
export function isTimeZone(name: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+\-/]*$/.test(name)) return false;
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
