'use server';

import { refresh } from 'next/cache';
import { saveCostRates } from '@/app/_commands/save-cost-rates';
import { now } from '@/app/_server/clock';
import { done, readForm } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { costRatesFormSchema } from '@/lib/contracts/cost-forms';
import { db } from '@/prisma/client';

export async function saveCostRatesAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(costRatesFormSchema((await currentShop()).currency), data);
  if (!form.ok) return form.state;
  await saveCostRates(await db(), form.value, now());
  refresh();
  return done('Saved for all models.');
}
