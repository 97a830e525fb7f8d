'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { addLot } from '@/app/_commands/add-lot';
import { addStockOrder } from '@/app/_commands/add-stock-order';
import { removeLot } from '@/app/_commands/remove-lot';
import { removeStockOrder } from '@/app/_commands/remove-stock-order';
import { saveBuying } from '@/app/_commands/save-buying';
import { saveLot } from '@/app/_commands/save-lot';
import { saveMaterial } from '@/app/_commands/save-material';
import { saveSheet } from '@/app/_commands/save-sheet';
import { saveStrength } from '@/app/_commands/save-strength';
import { setMaterialArchived } from '@/app/_commands/set-material-archived';
import { now } from '@/app/_server/clock';
import { done, readForm, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { lotFormSchema, materialFormSchema } from '@/lib/contracts/material-forms';
import { idSchema } from '@/lib/contracts/plain-text';
import { sheetFormSchema } from '@/lib/contracts/sheet-form';
import { buyingFormSchema, stockOrderFormSchema } from '@/lib/contracts/stock-forms';
import { strengthFormSchema } from '@/lib/contracts/strength-form';
import { STRENGTH_KINDS, type StrengthKind } from '@/lib/materials/strength-figures';
import { STOCK_UNITS, type StockUnit } from '@/lib/stock/ledger';
import { db } from '@/prisma/client';

export async function saveMaterialAction(materialId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(materialFormSchema, data);
  if (!form.ok) return form.state;
  const result = await saveMaterial(await db(), idSchema.parse(materialId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved.');
}

export async function saveBuyingAction(materialId: string, _: FormState, data: FormData): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(buyingFormSchema(shop, shop.currency), data);
  if (!form.ok) return form.state;
  const result = await saveBuying(await db(), idSchema.parse(materialId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved.');
}

export async function addStockOrderAction(
  materialId: string,
  unit: StockUnit,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const known = z.enum(STOCK_UNITS).parse(unit);
  const form = readForm(stockOrderFormSchema(known, await currentShop()), data);
  if (!form.ok) return form.state;
  const result = await addStockOrder(await db(), idSchema.parse(materialId), known, form.value, now());
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Written down.');
}

export async function removeStockOrderAction(orderId: string, _: FormState): Promise<FormState> {
  await removeStockOrder(await db(), idSchema.parse(orderId));
  refresh();
  return done('Taken out.');
}

export async function setMaterialArchivedAction(
  materialId: string,
  isArchived: boolean,
  _: FormState,
): Promise<FormState> {
  await setMaterialArchived(await db(), idSchema.parse(materialId), isArchived === true, now());
  refresh();
  return done(isArchived ? 'Put away. It stands under Archived.' : 'Back in the list.');
}

export async function saveSheetAction(materialId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(sheetFormSchema(await currentShop()), data);
  if (!form.ok) return form.state;
  const result = await saveSheet(await db(), idSchema.parse(materialId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/stock/${materialId}`);
}

export async function saveStrengthAction(
  materialId: string,
  kind: StrengthKind,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(strengthFormSchema(z.enum(STRENGTH_KINDS).parse(kind), await currentShop()), data);
  if (!form.ok) return form.state;
  const result = await saveStrength(await db(), idSchema.parse(materialId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/stock/${materialId}`);
}

async function lotForm() {
  const shop = await currentShop();
  return lotFormSchema(shop, shop.currency);
}

export async function addLotAction(materialId: string, _: FormState, data: FormData): Promise<FormState> {
  const form = readForm(await lotForm(), data);
  if (!form.ok) return form.state;
  const result = await addLot(await db(), idSchema.parse(materialId), form.value, now());
  if (!result.ok) return refusedBy(data, result);
  redirect(`/stock/${materialId}`);
}

export async function saveLotAction(
  materialId: string,
  lotId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(await lotForm(), data);
  if (!form.ok) return form.state;
  const result = await saveLot(await db(), idSchema.parse(lotId), form.value);
  if (!result.ok) return refusedBy(data, result);
  redirect(`/stock/${idSchema.parse(materialId)}`);
}

export async function removeLotAction(
  materialId: string,
  lotId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const result = await removeLot(await db(), idSchema.parse(lotId));
  if (!result.ok) return refusedBy(data, result);
  redirect(`/stock/${idSchema.parse(materialId)}`);
}
