'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { addResourceChange, removeResource, removeResourceChange, saveResource } from '@/app/_commands/save-resource';
import { now } from '@/app/_server/clock';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import { resourceChangeFormSchema, resourceFormSchema } from '@/lib/contracts/resource-forms';
import { db } from '@/prisma/client';

export async function saveResourceAction(resourceId: string | null, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(resourceFormSchema, data);
  if (!form.ok) return form.state;
  const id = resourceId === null ? null : idSchema.parse(resourceId);
  const result = await saveResource(await db(), id, form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done(id === null ? 'Added.' : 'Saved. Plan anew to use it.');
}

export async function removeResourceAction(resourceId: string, _: FormState): Promise<FormState> {
  await removeResource(await db(), idSchema.parse(resourceId));
  redirect('/shop/places');
}

export async function addResourceChangeAction(resourceId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(resourceChangeFormSchema, data);
  if (!form.ok) return form.state;
  const result = await addResourceChange(await db(), idSchema.parse(resourceId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Written down.');
}

export async function removeResourceChangeAction(_: FormState, data: FormData): Promise<FormState> {
  const id = idSchema.safeParse(data.get('changeId'));
  if (!id.success) return refused(data, { message: 'Reload the page: this is not in the list any more.' });
  await removeResourceChange(await db(), id.data);
  refresh();
  return done('Taken back.');
}
