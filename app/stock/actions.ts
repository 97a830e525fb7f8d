'use server';

import { redirect } from 'next/navigation';
import { addMaterial } from '@/app/_commands/add-material';
import { now } from '@/app/_server/clock';
import { readForm, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { newMaterialFormSchema } from '@/lib/contracts/material-forms';
import { db } from '@/prisma/client';
import { hasSheet } from '@/prisma/data/materials';

export async function addMaterialAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(newMaterialFormSchema, data);
  if (!form.ok) return form.state;
  const result = await addMaterial(await db(), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  const page = `/stock/${result.materialId}`;
  redirect(hasSheet(form.value.kind) ? `${page}/sheet` : page);
}
