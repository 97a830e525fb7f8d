'use server';

import { redirect } from 'next/navigation';
import { openBatch } from '@/app/_commands/open-batch';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { readForm, refused } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { openBatchFormSchema } from '@/lib/contracts/open-batch';
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
