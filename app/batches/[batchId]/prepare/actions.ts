'use server';

import { revalidatePath } from 'next/cache';
import { makePreparation } from '@/app/_commands/make-preparation';
import { tickPreparation } from '@/app/_commands/tick-preparation';
import { weighBack } from '@/app/_commands/weigh-back';
import { now } from '@/app/_server/clock';
import { done, readForm, refusedBy } from '@/app/_server/form';
import { currentPerson, currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { prepareFormSchema, tickFormSchema, weighBackFormSchema } from '@/lib/contracts/preparation';
import { db } from '@/prisma/client';

/** Plans mixes and cuts for what is still open of a batch. */
export async function prepareAction(batchId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(prepareFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  const result = await makePreparation(await db(), batchId, form.value, now());
  if (!result.ok) return refusedBy(data, result);
  revalidatePath(`/batches/${batchId}/prepare`);
  return done('Prepared: the card below is for what is still open now.');
}

/** Ticks one line of the card off, or takes the tick back. */
export async function tickAction(batchId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(tickFormSchema, data);
  if (!form.ok) return form.state;
  const person = await currentPerson();
  const result = await tickPreparation(await db(), form.value, { personId: person?.id ?? null, nowAt: now() });
  if (!result.ok) return refusedBy(data, result);
  revalidatePath(`/batches/${batchId}/prepare`);
  return done(form.value.isDone ? 'Ticked off.' : 'Open again.');
}

/** Keeps what was left in the cups of one card. */
export async function weighBackAction(batchId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(weighBackFormSchema, data);
  if (!form.ok) return form.state;
  const result = await weighBack(await db(), form.value);
  if (!result.ok) return refusedBy(data, result);
  revalidatePath(`/batches/${batchId}/prepare`);
  return done('Kept: the next cards count with it.');
}
