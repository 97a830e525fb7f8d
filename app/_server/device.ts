import 'server-only';
import { cookies } from 'next/headers';

/** What a device remembers: who stands at it, and whether it shows paper or deep water. */
export const PERSON_COOKIE = 'bench-person';
export const THEME_COOKIE = 'theme';

export type Theme = 'light' | 'dark';

const YEAR_SECONDS = 365 * 24 * 3600;

/** The look chosen on this device; null follows the device's own setting. */
export async function chosenTheme(): Promise<Theme | null> {
  const value = (await cookies()).get(THEME_COOKIE)?.value;
  return value === 'light' || value === 'dark' ? value : null;
}

/** Id of the person who said they are at this device; null when nobody did. The person may be gone since. */
export async function chosenPersonId(): Promise<string | null> {
  return (await cookies()).get(PERSON_COOKIE)?.value ?? null;
}

/** Remembers a value on this device for a year, or forgets it. */
export async function rememberOnDevice(name: string, value: string | null): Promise<void> {
  const jar = await cookies();
  if (value === null) jar.delete(name);
  else jar.set(name, value, { httpOnly: true, sameSite: 'lax', path: '/', maxAge: YEAR_SECONDS });
}
