'use server';

import { refresh } from 'next/cache';
import { saveOrderNumbers } from '@/app/_commands/save-order-numbers';
import { done, readForm, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { orderNumbersFormSchema } from '@/lib/contracts/cost-forms';
import { idSchema } from '@/lib/contracts/plain-text';
import { db } from '@/prisma/client';

export async function saveOrderNumbersAction(batchId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(orderNumbersFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveOrderNumbers(await db(), idSchema.parse(batchId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved.');
}
