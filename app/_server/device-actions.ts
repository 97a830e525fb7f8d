'use server';

import { refresh } from 'next/cache';
import { PERSON_COOKIE, rememberOnDevice, THEME_COOKIE } from './device';

/** Chooses paper, deep water, or (empty) what the device says. */
export async function chooseTheme(data: FormData): Promise<void> {
  const theme = data.get('theme');
  await rememberOnDevice(THEME_COOKIE, theme === 'light' || theme === 'dark' ? theme : null);
  refresh();
}

/** Says who stands at this device; an empty choice forgets it. */
export async function choosePerson(data: FormData): Promise<void> {
  const personId = data.get('personId');
  const isPlausible = typeof personId === 'string' && /^[\w-]{1,64}$/.test(personId);
  await rememberOnDevice(PERSON_COOKIE, isPlausible ? personId : null);
  refresh();
}
