import { randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { readListQuery } from '@/app/_server/list-query';
import { pullClocks } from '@/app/_server/pull-clock';
import { pullRecords } from '@/app/_server/pull-records';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page, Section } from '@/app/_ui/page';
import { PullCautions } from '@/app/pull-tests/_components/pull-cautions';
import { SavedPull } from '@/app/pull-tests/_components/saved-pull';
import { judgePulls } from '@/lib/pulltest/judge-pulls';
import { lengthText } from '@/lib/units/format-quantity';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';
import { listScales } from '@/prisma/data/scales';
import { PullCard } from '../../_components/pull-card';
import { PullForm } from '../../_components/pull-form';
import { Timing } from '../../_components/specimen-table';

export const metadata: Metadata = { title: 'Specimen' };

/** One specimen at the scale: big, for gloves, with what it is and whether it may be pulled. */
export default async function SpecimenPage({
  params,
  searchParams,
}: PageProps<'/pull-tests/[seriesId]/specimens/[specimenId]'>) {
  const { seriesId, specimenId } = await params;
  const { word } = await readListQuery(searchParams);
  const [database, shop] = [await db(), await currentShop()];
  const series = await findPullSeries(database, seriesId);
  const specimen = series?.specimens.find(({ id }) => id === specimenId);
  if (series === null || specimen === undefined) notFound();
  const nowAt = now();
  const clock = (await pullClocks(database, shop, series, nowAt))(specimen, nowAt);
  const scales = await listScales(database);
  const judged = judgePulls(pullRecords(series), { question: series.plan.question });
  const own = judged.filter(({ record }) => record.specimenId === specimenId);
  const mix = series.mixes.find(({ id }) => id === specimen.mixId);
  const base = `/pull-tests/${seriesId}`;
  const index = series.specimens.indexOf(specimen);
  const [previous, next] = [series.specimens[index - 1], series.specimens[index + 1]];
  return (
    <Page
      title={`Specimen ${specimen.code}`}
      lead={`Number ${specimen.pullOrder} of ${series.specimens.length} to be pulled. ${specimen.condition}.`}
      up={{ href: base, label: series.name }}
    >
      <SavedPull series={series} judged={judged} pullId={word('saved')} unit={shop.forceUnit} />
      <dl className="flex flex-wrap gap-x-10 gap-y-3">
        <Fact term="Depth" value={lengthText(specimen.depthMm, shop.lengthUnit)} />
        <Fact term="Mix" value={mix?.name ?? ''} />
        {specimen.piece !== null && <Fact term="Piece" value={String(specimen.piece)} />}
      </dl>
      <p className="text-xl">
        <Timing clock={clock} nowAt={nowAt} zone={shop.timeZone} />
      </p>
      {own.map((pull) => (
        <PullCard
          key={pull.record.id}
          series={series}
          judged={pull}
          pull={series.pulls.find(({ id }) => id === pull.record.id) ?? null}
          scales={scales}
          shop={shop}
        />
      ))}
      {!series.isClosed && (
        <Section title={own.length === 0 ? 'Write the pull down' : 'Pulled again'}>
          <PullCautions step="pulling" />
          <PullForm
            seriesId={seriesId}
            specimenId={specimenId}
            // Sent twice, the form writes one pull down.
            pullKey={randomUUID()}
            scales={scales}
            lastScaleId={series.pulls.at(-1)?.scaleId ?? null}
            unit={shop.forceUnit}
            isEarly={clock.timing.kind === 'early'}
            wasPulled={own.length > 0}
          />
        </Section>
      )}
      <nav aria-label="Specimens before and after" className="flex flex-wrap gap-3">
        {previous !== undefined && (
          <ButtonLink href={`${base}/specimens/${previous.id}`}>Before: {previous.code}</ButtonLink>
        )}
        {next !== undefined && <ButtonLink href={`${base}/specimens/${next.id}`}>After: {next.code}</ButtonLink>}
      </nav>
      <PullCautions step="after" />
    </Page>
  );
}

function Fact({ term, value }: { readonly term: string; readonly value: string }) {
  return (
    <div>
      <dt className="text-sm text-ink-soft">{term}</dt>
      <dd className="text-4xl font-bold">{value}</dd>
    </div>
  );
}
