'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { openBatch } from '@/app/_commands/open-batch';
import { saveBatchPlanning } from '@/app/_commands/save-planning';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { openBatchFormSchema } from '@/lib/contracts/open-batch';
import { idSchema } from '@/lib/contracts/plain-text';
import { batchPlanningFormSchema } from '@/lib/contracts/planning-forms';
import { db } from '@/prisma/client';

/** Opens a batch from its form and goes to its page. */
export async function openBatchAction(_previous: FormState, data: FormData): Promise<FormState> {
  const form = readForm(openBatchFormSchema, data);
  if (!form.ok) return form.state;
  const personId = await chosenPersonId();
  const opened = await openBatch(await db(), { ...form.value, personId, now: now() });
  if (!opened.ok) {
    const message = [opened.message, ...opened.details].join(' ');
    return refused(data, opened.code === 'key-reused' ? { message } : { fieldErrors: { revisionId: message } });
  }
  redirect(`/batches/${opened.batchId}${opened.hasFrozen ? '?opened=frozen' : ''}`);
}

/** Saves what the plan asks of a batch: when it may begin, when it is due, and how much that weighs. */
export async function saveBatchPlanningAction(batchId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(batchPlanningFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveBatchPlanning(await db(), idSchema.parse(batchId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved. Plan anew to use it.');
}
