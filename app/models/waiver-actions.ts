'use server';

import { refresh } from 'next/cache';
import { grantWaiver } from '@/app/_commands/grant-waiver';
import { withdrawWaiver } from '@/app/_commands/withdraw-waiver';
import { now } from '@/app/_server/clock';
import { done, readForm, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import { waiverFormSchema } from '@/lib/contracts/waiver-form';
import { db } from '@/prisma/client';

export async function grantWaiverAction(revisionId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(waiverFormSchema, data);
  if (!form.ok) return form.state;
  const result = await grantWaiver(await db(), idSchema.parse(revisionId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Accepted for this revision.');
}

export async function withdrawWaiverAction(waiverId: string, _: FormState, data: FormData): Promise<FormState> {
  const result = await withdrawWaiver(await db(), idSchema.parse(waiverId), now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Taken back.');
}
