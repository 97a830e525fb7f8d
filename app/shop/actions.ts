'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { addBenchException } from '@/app/_commands/add-bench-exception';
import { addPerson } from '@/app/_commands/add-person';
import { removeBenchException } from '@/app/_commands/remove-bench-exception';
import { saveShopSettings } from '@/app/_commands/save-shop-settings';
import { now } from '@/app/_server/clock';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { shopDayFormSchema } from '@/lib/contracts/bench-hours';
import { idSchema } from '@/lib/contracts/plain-text';
import { personFormSchema, shopSettingsFormSchema } from '@/lib/contracts/shop-settings';
import { db } from '@/prisma/client';

export async function saveShopSettingsAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(shopSettingsFormSchema, data);
  if (!form.ok) return form.state;
  await saveShopSettings(await db(), form.value, now());
  refresh();
  return done('Saved. Every clock is read anew.');
}

export async function addPersonAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(personFormSchema, data);
  if (!form.ok) return form.state;
  const result = await addPerson(await db(), form.value.name, now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/shop/people/${result.personId}`);
}

/** A day on which the whole shop differs. */
export async function addShopExceptionAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(shopDayFormSchema, data);
  if (!form.ok) return form.state;
  await addBenchException(await db(), null, form.value);
  refresh();
  return done('Written down.');
}

export async function removeExceptionAction(_: FormState, data: FormData): Promise<FormState> {
  const id = idSchema.safeParse(data.get('exceptionId'));
  if (!id.success) return refused(data, { message: 'Reload the page: this day is not in the list any more.' });
  await removeBenchException(await db(), id.data);
  refresh();
  return done('Taken back.');
}
