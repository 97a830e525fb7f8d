import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { conditionDraft } from '@/app/_server/calibration-draft';
import { calibrationEffect } from '@/app/_server/calibration-effect';
import { now } from '@/app/_server/clock';
import { analysedSeries } from '@/app/_server/pull-page';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { TextAreaField } from '@/app/_ui/field';
import { Page, Section } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { calibrationWarningText, draftRefusalText } from '@/app/pull-tests/_components/calibration-words';
import { EffectList } from '@/app/pull-tests/_components/effect-list';
import { lengthText } from '@/lib/units/format-quantity';
import { db } from '@/prisma/client';
import { findAcceptedCalibration } from '@/prisma/data/calibrations';
import { findPullSeries } from '@/prisma/data/pull-series';
import { acceptCalibrationAction } from './actions';

export const metadata: Metadata = { title: 'Accept an analysis' };

/** What accepting a series would change, model by model and batch by batch, before it is accepted. */
export default async function AcceptPage({ params }: PageProps<'/pull-tests/[seriesId]/accept'>) {
  const { seriesId } = await params;
  const [database, shop, nowAt] = [await db(), await currentShop(), now()];
  const series = await findPullSeries(database, seriesId);
  if (series === null) notFound();
  const analysed = await analysedSeries(database, series);
  const parts = [];
  for (const { name } of series.plan.conditions) {
    const draft = conditionDraft(series, analysed, name, shop);
    if (!draft.ok) {
      parts.push({ name, draft, effect: null, earlier: null });
      continue;
    }
    const effect = await calibrationEffect(database, draft.key, draft, nowAt);
    parts.push({ name, draft, effect, earlier: await findAcceptedCalibration(database, draft.key) });
  }
  return (
    <Page
      title="Accept what the pulls say"
      lead="From then on the strength of joints of this wood, glue and wire rests on these pulls. See first what that changes."
      up={{ href: `/pull-tests/${seriesId}/analysis`, label: `What “${series.name}” says` }}
    >
      {parts.map(({ name, draft, effect, earlier }) => (
        <Section key={name} title={name}>
          {!draft.ok || effect === null ? (
            <p className="max-w-3xl">{draft.ok ? '' : draftRefusalText(draft.code)}</p>
          ) : (
            <div className="grid max-w-4xl gap-6">
              {earlier !== null && (
                <p>
                  Version {earlier.version} is in force, with {earlier.body.pulls.length} pulls. It is superseded and
                  kept.
                </p>
              )}
              {draft.warnings.length > 0 && (
                <ul className="grid list-disc gap-1 border-l-4 border-accent bg-accent-soft px-4 py-3 pl-8">
                  {draft.warnings.map((warning) => (
                    <li key={warning}>{calibrationWarningText(warning)}</li>
                  ))}
                </ul>
              )}
              {draft.saturationMm !== null && (
                <p className="text-sm text-ink-soft">
                  In these pulls strength bends over a depth of {lengthText(draft.saturationMm, shop.lengthUnit)}; the
                  rules take the shop’s figure.
                </p>
              )}
              <EffectList effect={effect} units={shop} />
              <ActionForm action={acceptCalibrationAction.bind(null, seriesId, name)}>
                <input type="hidden" name="seenVersion" value={series.version} />
                <TextAreaField
                  name="note"
                  label="Note"
                  hint="Why you trust it, or what to keep in mind."
                  isOptional
                  rows={2}
                  maxLength={500}
                />
                <div>
                  <SubmitButton pendingText="Accepting…">Accept as calibration</SubmitButton>
                </div>
              </ActionForm>
            </div>
          )}
        </Section>
      ))}
    </Page>
  );
}
