'use server';

import { redirect } from 'next/navigation';
import { saveRuleFigures } from '@/app/_commands/save-rule-figures';
import { now } from '@/app/_server/clock';
import { readForm } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { ruleFiguresFormSchema } from '@/lib/contracts/rule-figures';
import { db } from '@/prisma/client';

export async function saveRuleFiguresAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(ruleFiguresFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  await saveRuleFigures(await db(), form.value, now());
  redirect('/rules');
}
