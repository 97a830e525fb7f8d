import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { readListQuery } from '@/app/_server/list-query';
import { pullClocks } from '@/app/_server/pull-clock';
import { pullRecords } from '@/app/_server/pull-records';
import { currentPeople, currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { buttonClass } from '@/app/_ui/button-class';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page, Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { judgePulls } from '@/lib/pulltest/judge-pulls';
import { db } from '@/prisma/client';
import { findPullSeries, listPullChanges, type PullSeries } from '@/prisma/data/pull-series';
import { PullCautions } from '../_components/pull-cautions';
import { SavedPull } from '../_components/saved-pull';
import { ChangeList } from './_components/change-list';
import { MixHours } from './_components/mix-hours';
import { SpecimenTable } from './_components/specimen-table';
import { closePullSeriesAction } from './actions';

export async function generateMetadata({ params }: PageProps<'/pull-tests/[seriesId]'>): Promise<Metadata> {
  const { seriesId } = await params;
  const row = await (await db()).pullSeries.findUnique({ where: { id: seriesId }, select: { name: true } });
  return { title: row?.name ?? 'Pull series' };
}

/** Entries of the history that are shown. Chosen: a long evening's worth. */
const SHOWN_CHANGES = 40;

/** One series: what is pulled next, its mixes with their hours, every specimen in the order of pulling. */
export default async function PullSeriesPage({ params, searchParams }: PageProps<'/pull-tests/[seriesId]'>) {
  const { seriesId } = await params;
  const { word } = await readListQuery(searchParams);
  const [database, shop, people] = [await db(), await currentShop(), await currentPeople()];
  const series = await findPullSeries(database, seriesId);
  if (series === null) notFound();
  const nowAt = now();
  const [clockOf, changes] = [
    await pullClocks(database, shop, series, nowAt),
    await listPullChanges(database, seriesId, SHOWN_CHANGES),
  ];
  const judged = judgePulls(pullRecords(series), { question: series.plan.question });
  const pulled = new Set(series.pulls.map(({ specimenId }) => specimenId));
  const next = series.specimens.find(({ id }) => !pulled.has(id));
  const base = `/pull-tests/${seriesId}`;
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return (
    <Page
      title={series.name}
      lead={leadText(series, pulled.size)}
      up={{ href: '/pull-tests', label: 'Pull tests' }}
      actions={
        <>
          {next !== undefined && !series.isClosed && (
            <ButtonLink href={`${base}/specimens/${next.id}`} weight="primary">
              Pull {next.code} next
            </ButtonLink>
          )}
          <ButtonLink href={`${base}/card`}>Test card</ButtonLink>
          <ButtonLink href={`${base}/import`}>Take in a file</ButtonLink>
          <a href={`/api/v1/pull-series/${seriesId}/file`} className={buttonClass('plain')}>
            Save as a file
          </a>
          <ButtonLink href={`${base}/analysis`} weight={next === undefined ? 'primary' : 'plain'}>
            What it says
          </ButtonLink>
        </>
      }
    >
      <SavedPull series={series} judged={judged} pullId={word('saved')} unit={shop.forceUnit} />
      {series.isClosed && (
        <p>
          <StatusMark status="done">Closed</StatusMark>
        </p>
      )}
      {series.note !== '' && <p className="max-w-3xl whitespace-pre-wrap">{series.note}</p>}
      <Section
        title="Mixes"
        lead="Write down when each was mixed and set: the cure clock of its specimens counts from then."
      >
        <MixHours series={series} shop={shop} />
      </Section>
      {!series.isClosed && next !== undefined && <PullCautions step="setting-up" />}
      <Section title="Specimens, in the order of pulling" lead={`Drawn from the seed ${series.plan.seed}.`}>
        <SpecimenTable series={series} judged={judged} clockOf={clockOf} shop={shop} nowAt={nowAt} />
      </Section>
      <PullCautions step="after" />
      <Section title="History" lead="Nothing is deleted: what was changed stands here with what it was before.">
        <ChangeList
          changes={changes}
          series={series}
          shop={shop}
          nowAt={nowAt}
          nameOf={(id) => names.get(id ?? '') ?? null}
        />
        <ActionForm action={closePullSeriesAction.bind(null, seriesId, !series.isClosed)}>
          <div>
            <SubmitButton weight="plain">{series.isClosed ? 'Open the series again' : 'Close the series'}</SubmitButton>
          </div>
        </ActionForm>
      </Section>
    </Page>
  );
}

function leadText({ specimens, mixes, plan, kind }: PullSeries, pulled: number): string {
  const of = kind === 'acceptance' ? 'Pieces of a batch' : plan.conditions.map(({ name }) => name).join('; ');
  return `${of}. ${pulled} of ${specimens.length} specimens pulled, from ${mixes.length === 1 ? '1 mix' : `${mixes.length} mixes`}.`;
}
