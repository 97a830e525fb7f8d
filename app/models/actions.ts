'use server';

import { redirect } from 'next/navigation';
import { makeModel } from '@/app/_commands/make-model';
import { now } from '@/app/_server/clock';
import { readForm, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { newModelFormSchema } from '@/lib/contracts/model-forms';
import { db } from '@/prisma/client';

export async function makeModelAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(newModelFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  const result = await makeModel(await db(), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/models/${result.modelId}`);
}
