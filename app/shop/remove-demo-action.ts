'use server';

import { removeDemo } from '@/app/_commands/remove-demo';
import { now } from '@/app/_server/clock';
import { done, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { db } from '@/prisma/client';

/** Takes the demo out. The page is not read anew, so that the answer, with what stays, can be read. */
export async function removeDemoAction(_: FormState, data: FormData): Promise<FormState> {
  const result = await removeDemo(await db(), now());
  if (!result.ok) return refusedBy(data, result);
  const { batches, models, kept } = result;
  const out = `The demo workshop is out: ${batches} batches, ${models} models, and what belonged to them.`;
  const stays = kept.map(({ kind, name, reason }) => `${kind} “${name}”, because ${reason}`);
  const rest = stays.length === 0 ? '' : ` It leaves you: ${stays.join('; ')}.`;
  return done(`${out}${rest} Look once at the time zone, the units and the usual temperature: they stay as they were.`);
}
