'use server';

import { refresh } from 'next/cache';
import { saveRoutePlanning } from '@/app/_commands/save-planning';
import { done, readForm, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import { routePlanningFormSchema } from '@/lib/contracts/planning-forms';
import { db } from '@/prisma/client';

export async function savePlanningAction(revisionId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(routePlanningFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveRoutePlanning(await db(), idSchema.parse(revisionId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved. Plan anew to use it.');
}
