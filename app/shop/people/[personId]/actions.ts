'use server';

import { refresh } from 'next/cache';
import { addBenchException } from '@/app/_commands/add-bench-exception';
import { renamePerson } from '@/app/_commands/rename-person';
import { saveBenchHours } from '@/app/_commands/save-bench-hours';
import { savePersonSkills } from '@/app/_commands/save-planning';
import { setPersonActive } from '@/app/_commands/set-person-active';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import type { FormState } from '@/app/_ui/form-state';
import { benchExceptionFormSchema, benchHoursFormSchema } from '@/lib/contracts/bench-hours';
import { idSchema } from '@/lib/contracts/plain-text';
import { skillsFormSchema } from '@/lib/contracts/planning-forms';
import { personFormSchema } from '@/lib/contracts/shop-settings';
import { db } from '@/prisma/client';
import { findPerson } from '@/prisma/data/people';

const GONE = 'This person is not in the list any more. Go back to Shop.';

export async function saveBenchHoursAction(personId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(benchHoursFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveBenchHours(await db(), idSchema.parse(personId), form.value);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Bench hours saved.');
}

export async function addExceptionAction(personId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(benchExceptionFormSchema, data);
  if (!form.ok) return form.state;
  const database = await db();
  const person = await findPerson(database, idSchema.parse(personId));
  if (person === null) return refused(data, { message: GONE });
  await addBenchException(database, person.id, form.value);
  refresh();
  return done('Written down.');
}

export async function renamePersonAction(personId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(personFormSchema, data);
  if (!form.ok) return form.state;
  const result = await renamePerson(await db(), idSchema.parse(personId), form.value.name);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Name saved.');
}

export async function saveSkillsAction(personId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(skillsFormSchema, data);
  if (!form.ok) return form.state;
  const result = await savePersonSkills(await db(), idSchema.parse(personId), form.value.skills);
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Skills saved.');
}

export async function setActiveAction(personId: string, isActive: boolean, _: FormState): Promise<FormState> {
  await setPersonActive(await db(), idSchema.parse(personId), isActive === true);
  refresh();
  return done(isActive ? 'Back in the list at the bench.' : 'No longer offered at the bench.');
}
