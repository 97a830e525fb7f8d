'use server';

import { refresh } from 'next/cache';
import { redirect } from 'next/navigation';
import { closePullSeries } from '@/app/_commands/close-pull-series';
import { correctPull } from '@/app/_commands/correct-pull';
import { excludePull } from '@/app/_commands/exclude-pull';
import { recordPull } from '@/app/_commands/record-pull';
import { savePullMix } from '@/app/_commands/save-pull-mix';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { done, readForm, refused, refusedBy } from '@/app/_server/form';
import { currentShop } from '@/app/_server/shop';
import { instantOfMoment } from '@/app/_server/wall-moment';
import type { FormState } from '@/app/_ui/form-state';
import { idSchema } from '@/lib/contracts/plain-text';
import {
  exclusionFormSchema,
  pullCorrectionSchema,
  pullFormSchema,
  pullMixFormSchema,
} from '@/lib/contracts/pull-forms';
import { whenText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

export async function savePullMixAction(
  seriesId: string,
  mixId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(pullMixFormSchema, data);
  if (!form.ok) return form.state;
  const { timeZone } = await currentShop();
  const { mixedAt, setAt, ...rest } = form.value;
  const result = await savePullMix(await db(), {
    ...rest,
    seriesId: idSchema.parse(seriesId),
    mixId: idSchema.parse(mixId),
    mixedAt: instantOfMoment(mixedAt, timeZone),
    setAt: instantOfMoment(setAt, timeZone),
    personId: await chosenPersonId(),
    now: now(),
  });
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Saved.');
}

/** Writes a pull down and goes on to the next specimen that was not pulled yet. */
export async function recordPullAction(
  seriesId: string,
  specimenId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(pullFormSchema(shop), data);
  if (!form.ok) return form.state;
  const { pulledAt, ...input } = form.value;
  const [database, nowAt] = [await db(), now()];
  const result = await recordPull(database, {
    seriesId: idSchema.parse(seriesId),
    specimenId: idSchema.parse(specimenId),
    input,
    pulledAt: instantOfMoment(pulledAt, shop.timeZone),
    personId: await chosenPersonId(),
    now: nowAt,
  });
  if (!result.ok) {
    const releasedAt = result.clock?.timing.kind === 'early' ? result.clock.timing.releasedAt : null;
    const when =
      releasedAt === null ? '' : ` It is sure to be cured from ${whenText(releasedAt, nowAt, shop.timeZone)}.`;
    return refusedBy(data, { ...result, message: `${result.message}${result.code === 'early' ? when : ''}` });
  }
  const series = await findPullSeries(database, seriesId);
  const pulled = new Set(series?.pulls.map((pull) => pull.specimenId));
  const next = series?.specimens.find(({ id }) => !pulled.has(id));
  const place = next === undefined ? '' : `/specimens/${next.id}`;
  redirect(`/pull-tests/${seriesId}${place}?saved=${result.pullId}`);
}

export async function correctPullAction(
  seriesId: string,
  pullId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const shop = await currentShop();
  const form = readForm(pullCorrectionSchema(shop), data);
  if (!form.ok) return form.state;
  const { pulledAt, ...input } = form.value;
  const result = await correctPull(await db(), {
    seriesId: idSchema.parse(seriesId),
    pullId: idSchema.parse(pullId),
    input,
    pulledAt: instantOfMoment(pulledAt, shop.timeZone),
    personId: await chosenPersonId(),
    now: now(),
  });
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Corrected. What stood there before is kept in the history.');
}

export async function excludePullAction(
  seriesId: string,
  pullId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(exclusionFormSchema, data);
  if (!form.ok) return form.state;
  const change = { seriesId: idSchema.parse(seriesId), pullId: idSchema.parse(pullId), exclusion: form.value };
  const result = await excludePull(await db(), { ...change, personId: await chosenPersonId(), now: now() });
  if (!result.ok) return refusedBy(data, result);
  refresh();
  return done('Left out. The reading stays, and the analysis shows both.');
}

export async function countAgainAction(
  seriesId: string,
  pullId: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const change = { seriesId: idSchema.parse(seriesId), pullId: idSchema.parse(pullId), exclusion: null };
  const result = await excludePull(await db(), { ...change, personId: await chosenPersonId(), now: now() });
  if (!result.ok) return refused(data, { message: result.message });
  refresh();
  return done('It counts again.');
}

export async function closePullSeriesAction(
  seriesId: string,
  isClosed: boolean,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const change = { seriesId: idSchema.parse(seriesId), isClosed: isClosed === true };
  const result = await closePullSeries(await db(), { ...change, personId: await chosenPersonId(), now: now() });
  if (!result.ok) return refused(data, { message: result.message });
  refresh();
  return done(isClosed ? 'Closed.' : 'Open again.');
}
