'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { addSensor } from '@/app/_commands/add-sensor';
import { chooseCureSensor } from '@/app/_commands/choose-cure-sensor';
import { saveSensor } from '@/app/_commands/save-sensor';
import { saveTemperatureProfile } from '@/app/_commands/save-temperature-profile';
import { now } from '@/app/_server/clock';
import { done, readForm, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import { profileFormSchema } from '@/lib/contracts/profile-form';
import { cureSensorFormSchema, sensorFormSchema } from '@/lib/contracts/shop-settings';
import { db } from '@/prisma/client';

export async function saveProfileAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(profileFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  await saveTemperatureProfile(await db(), form.value, now());
  refresh();
  return done('Saved. Every clock is read anew.');
}

export async function addSensorAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(sensorFormSchema, data);
  if (!form.ok) return form.state;
  const result = await addSensor(await db(), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done(result.rulesClocks ? 'Added. Its readings rule the cure clocks.' : 'Added.');
}

export async function saveSensorAction(sensorId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(sensorFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveSensor(await db(), idSchema.parse(sensorId), form.value);
  if (!result.ok) return refusedBy(data, result);
  redirect('/shop/temperature');
}

export async function chooseCureSensorAction(_: FormState, data: FormData): Promise<FormState> {
  const form = readForm(cureSensorFormSchema, data);
  if (!form.ok) return form.state;
  const result = await chooseCureSensor(await db(), form.value.cureSensorId, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved. Every clock is read anew.');
}
