'use server';

import { refresh } from 'next/cache';
import { correctMovement } from '@/app/_commands/correct-movement';
import { countLot } from '@/app/_commands/count-lot';
import { issueStock } from '@/app/_commands/issue-stock';
import type { MoveLotResult } from '@/app/_commands/move-lot';
import { receiveStock } from '@/app/_commands/receive-stock';
import { now } from '@/app/_server/clock';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import { currentPerson, currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import {
  correctMovementFormSchema,
  countFormSchema,
  issueFormSchema,
  receiveFormSchema,
} from '@/lib/contracts/stock-forms';
import { fromMilli } from '@/lib/stock/ledger';
import { stockText } from '@/lib/stock/stock-text';
import { db } from '@/prisma/client';
import { findLot, type Lot } from '@/prisma/data/lots';

const GONE = { message: 'This lot is not in Stock any more.' };

async function turn(lotId: string) {
  const database = await db();
  const [lot, shop, person] = await Promise.all([
    findLot(database, idSchema.parse(lotId)),
    currentShop(),
    currentPerson(),
  ]);
  return { database, lot, shop, by: { personId: person?.id ?? null, nowAt: now() } };
}

async function answer(data: FormData, lot: Lot, result: MoveLotResult): Promise<FormState> {
  if (!result.ok) return refusedBy(data, result);
  const left = stockText(fromMilli(result.leftMilli), lot.quantityUnit, await currentShop());
  refresh();
  return done(result.isRepeat ? `Written down before. ${left} left.` : `Written down. ${left} left.`);
}

export async function receiveAction(lotId: string, _: FormState, data: FormData): Promise<FormState> {
  const { database, lot, shop, by } = await turn(lotId);
  if (lot === null) return refused(data, GONE);
  const form = readForm(receiveFormSchema(lot.quantityUnit, shop, shop.currency), data);
  return form.ok ? answer(data, lot, await receiveStock(database, lot.id, form.value, by)) : form.state;
}

export async function issueAction(lotId: string, _: FormState, data: FormData): Promise<FormState> {
  const { database, lot, shop, by } = await turn(lotId);
  if (lot === null) return refused(data, GONE);
  const form = readForm(issueFormSchema(lot.quantityUnit, shop), data);
  return form.ok ? answer(data, lot, await issueStock(database, lot.id, form.value, by)) : form.state;
}

export async function countAction(lotId: string, _: FormState, data: FormData): Promise<FormState> {
  const { database, lot, shop, by } = await turn(lotId);
  if (lot === null) return refused(data, GONE);
  const form = readForm(countFormSchema(lot.quantityUnit, shop), data);
  return form.ok ? answer(data, lot, await countLot(database, lot.id, form.value, by)) : form.state;
}

export async function correctAction(
  lotId: string,
  movementId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const { database, lot, shop, by } = await turn(lotId);
  if (lot === null) return refused(data, GONE);
  const form = readForm(correctMovementFormSchema(lot.quantityUnit, shop), data);
  if (!form.ok) return form.state;
  return answer(data, lot, await correctMovement(database, idSchema.parse(movementId), form.value, by));
}
