'use server';

import { redirect } from 'next/navigation';
import type { Done, Refusal } from '@/app/_commands/command-result';
import { saveRevisionAnchors } from '@/app/_commands/save-revision-anchors';
import { saveRevisionBill } from '@/app/_commands/save-revision-bill';
import { saveRevisionBody } from '@/app/_commands/save-revision-body';
import { saveRevisionRoute } from '@/app/_commands/save-revision-route';
import { now } from '@/app/_server/clock';
import { readForm, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { anchorsFormSchema } from '@/lib/contracts/anchor-forms';
import { billFormSchema } from '@/lib/contracts/bill-forms';
import { bodyFormSchema } from '@/lib/contracts/model-forms';
import { idSchema } from '@/lib/contracts/plain-text';
import { routeFormSchema } from '@/lib/contracts/route-forms';
import { db } from '@/prisma/client';

export async function saveBodyAction(
  modelId: string,
  revisionId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(bodyFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  return backToModel(modelId, data, await saveRevisionBody(await db(), idSchema.parse(revisionId), form.value, now()));
}

export async function saveAnchorsAction(
  modelId: string,
  revisionId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(anchorsFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  return backToModel(
    modelId,
    data,
    await saveRevisionAnchors(await db(), idSchema.parse(revisionId), form.value, now()),
  );
}

export async function saveRouteAction(
  modelId: string,
  revisionId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(routeFormSchema, data);
  if (!form.ok) return form.state;
  return backToModel(modelId, data, await saveRevisionRoute(await db(), idSchema.parse(revisionId), form.value, now()));
}

export async function saveBillAction(
  modelId: string,
  revisionId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(billFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  return backToModel(modelId, data, await saveRevisionBill(await db(), idSchema.parse(revisionId), form.value, now()));
}

function backToModel(modelId: string, data: FormData, result: Done | Refusal<string>): FormState {
  if (!result.ok) return refusedBy(data, result);
  redirect(`/models/${idSchema.parse(modelId)}`);
}
