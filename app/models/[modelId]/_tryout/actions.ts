'use server';

import { refresh } from 'next/cache';
import { saveTriedSpec } from '@/app/_commands/save-tried-spec';
import { now } from '@/app/_server/clock';
import { done, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import { triedSpecSchema } from '@/lib/contracts/tried-spec';
import { db } from '@/prisma/client';

export async function saveTriedSpecAction(revisionId: string, _: FormState, data: FormData): Promise<FormState> {
  const tried = triedSpecSchema.safeParse(jsonOf(data.get('tried')));
  if (!tried.success) {
    const wrong = [...new Set(tried.error.issues.map(({ message }) => message))].join(' ');
    return refused(data, { message: `Nothing was saved. ${wrong}` });
  }
  const result = await saveTriedSpec(await db(), idSchema.parse(revisionId), tried.data, now());
  if (!result.ok) return refusedBy(data, { ...result, message: result.message });
  refresh();
  return done('Saved to the draft.');
}

function jsonOf(value: FormDataEntryValue | null): unknown {
  try {
    return typeof value === 'string' ? JSON.parse(value) : null;
  } catch {
    return null;
  }
}
