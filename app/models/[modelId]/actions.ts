'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { freezeRevision } from '@/app/_commands/freeze-revision';
import { reviseModel } from '@/app/_commands/revise-model';
import { saveModel } from '@/app/_commands/save-model';
import { setModelArchived } from '@/app/_commands/set-model-archived';
import { now } from '@/app/_server/clock';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { modelFormSchema, seenAtSchema } from '@/lib/contracts/model-forms';
import { idSchema } from '@/lib/contracts/plain-text';
import { db } from '@/prisma/client';

export async function saveModelAction(modelId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(modelFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveModel(await db(), idSchema.parse(modelId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved.');
}

export async function setArchivedAction(modelId: string, isArchived: boolean, _: FormState): Promise<FormState> {
  await setModelArchived(await db(), idSchema.parse(modelId), isArchived === true);
  refresh();
  return done(isArchived ? 'Put away. It stands under Archived.' : 'Back in the list.');
}

export async function freezeAction(revisionId: string, _: FormState, data: FormData): Promise<FormState> {
  const seenAt = seenAtSchema.safeParse(data.get('seenAt'));
  if (!seenAt.success) return refused(data, { message: 'Reload the page and try again.' });
  const result = await freezeRevision(await db(), idSchema.parse(revisionId), seenAt.data, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Frozen.');
}

export async function reviseAction(modelId: string, _: FormState, data: FormData): Promise<FormState> {
  const result = await reviseModel(await db(), idSchema.parse(modelId), now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/models/${modelId}?revision=${result.letter}`);
}
