'use server';

import { refresh } from 'next/cache';
import { headers } from 'next/headers';
import { createAccessToken } from '@/app/_commands/create-access-token';
import { revokeAccessToken } from '@/app/_commands/revoke-access-token';
import { now } from '@/app/_server/clock';
import { done, readForm, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { tokenFormSchema } from '@/lib/contracts/access-token';
import { idSchema } from '@/lib/contracts/plain-text';
import { db } from '@/prisma/client';

export async function createTokenAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(tokenFormSchema, data);
  if (!form.ok) return form.state;
  const result = await createAccessToken(await db(), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  if (form.value.scope === 'calendar:read') {
    const host = (await headers()).get('host') ?? 'localhost:3000';
    return {
      status: 'done',
      message: 'Subscribe to this address in your calendar. It is shown this once and is not kept.',
      secret: `http://${host}/api/v1/calendar/${result.token}.ics`,
    };
  }
  return {
    status: 'done',
    message: 'Copy the token now: it is shown this once and is not kept.',
    secret: result.token,
  };
}

export async function revokeTokenAction(tokenId: string, _: FormState): Promise<FormState> {
  await revokeAccessToken(await db(), idSchema.parse(tokenId), now());
  refresh();
  return done('Revoked.');
}
