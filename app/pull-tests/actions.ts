'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { makeAcceptance } from '@/app/_commands/make-acceptance';
import { makePullSeries } from '@/app/_commands/make-pull-series';
import { retireCalibration } from '@/app/_commands/retire-calibration';
import { saveScale } from '@/app/_commands/save-scale';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { done, readForm, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import {
  acceptanceFormSchema,
  newPullSeriesSchema,
  retireFormSchema,
  scaleFormSchema,
} from '@/lib/contracts/pull-forms';
import { inches } from '@/lib/units/force-and-length';
import type { LengthUnit } from '@/lib/units/unit-choice';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';

export async function makePullSeriesAction(_: FormState, data: FormData): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(newPullSeriesSchema(shop), data);
  if (!form.ok) return form.state;
  const request = { input: form.value, stepMm: stepOf(shop.lengthUnit), personId: await chosenPersonId(), now: now() };
  const result = await makePullSeries(await db(), request);
  if (!result.ok) return refusedBy(data, result);
  redirect(`/pull-tests/${result.seriesId}`);
}

export async function saveScaleAction(scaleId: string | null, _: FormState, data: FormData): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(scaleFormSchema(shop), data);
  if (!form.ok) return form.state;
  const id = scaleId === null ? null : idSchema.parse(scaleId);
  const nowAt = now();
  const days = { today: wallTimeAt(nowAt, shop.timeZone).day, nowAt };
  const result = await saveScale(await db(), id, form.value, days);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done(scaleId === null ? 'Added.' : 'Saved.');
}

export async function retireCalibrationAction(calibrationId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(retireFormSchema, data);
  if (!form.ok) return form.state;
  const result = await retireCalibration(await db(), idSchema.parse(calibrationId), { ...form.value, now: now() });
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Out of use.');
}

export async function makeAcceptanceAction(_: FormState, data: FormData): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(acceptanceFormSchema(shop), data);
  if (!form.ok) return form.state;
  const request = { input: form.value, stepMm: stepOf(shop.lengthUnit), personId: await chosenPersonId(), now: now() };
  const result = await makeAcceptance(await db(), request);
  if (!result.ok) return refusedBy(data, result);
  redirect(`/pull-tests/${result.seriesId}`);
}

/** Depths are set on a drill stop: sixteenths of an inch, or half millimetres. */
function stepOf(unit: LengthUnit): number {
  return unit === 'inch' ? inches(1 / 16) : 0.5;
}
