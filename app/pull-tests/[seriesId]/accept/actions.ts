'use server';

import { redirect } from 'next/navigation';
import { acceptCalibration } from '@/app/_commands/accept-calibration';
import { conditionDraft } from '@/app/_server/calibration-draft';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { readForm, refused, refusedBy } from '@/app/_server/form';
import { analysedSeries } from '@/app/_server/pull-page';
import { currentShop } from '@/app/_server/shop';
import type { FormState } from '@/app/_ui/form-state';
import { draftRefusalText } from '@/app/pull-tests/_components/calibration-words';
import { idSchema } from '@/lib/contracts/plain-text';
import { acceptFormSchema } from '@/lib/contracts/pull-forms';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

/** Accepts one condition of a series, and goes to the calibrations. */
export async function acceptCalibrationAction(
  seriesId: string,
  conditionName: string,
  _: FormState,
  data: FormData,
): Promise<FormState> {
  const form = readForm(acceptFormSchema, data);
  if (!form.ok) return form.state;
  const [database, shop] = [await db(), await currentShop()];
  const series = await findPullSeries(database, idSchema.parse(seriesId));
  if (series === null) return refused(data, { message: 'This series is not there any more.' });
  const draft = conditionDraft(series, await analysedSeries(database, series), conditionName, shop);
  if (!draft.ok) return refused(data, { message: draftRefusalText(draft.code) });
  const result = await acceptCalibration(database, {
    ...form.value,
    seriesId: series.id,
    key: draft.key,
    body: draft.body,
    personId: await chosenPersonId(),
    now: now(),
  });
  if (!result.ok) return refusedBy(data, result);
  redirect(`/pull-tests/calibrations?accepted=${result.calibrationId}`);
}
