import type { Metadata } from 'next';
import Link from 'next/link';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { dateText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { listPullSeries, type PullSeriesLine } from '@/prisma/data/pull-series';

export const metadata: Metadata = { title: 'Pull tests' };

export default async function PullTestsPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { page } = await readListQuery(searchParams);
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const { lines, total } = await listPullSeries(database, { page: page - 1, pageSize: PAGE_SIZE });
  return (
    <Page
      title="Pull tests"
      lead="Find out what your joints hold: a fair plan, a card for the scale, and an answer with its limits."
      actions={
        <>
          <ButtonLink href="/pull-tests/scales">Scales</ButtonLink>
          <ButtonLink href="/pull-tests/calibrations">Calibrations</ButtonLink>
          <ButtonLink href="/pull-tests/new" weight="primary">
            New series
          </ButtonLink>
        </>
      }
    >
      {total === 0 ? (
        <EmptyState
          title="No series yet"
          action={<ButtonLink href="/pull-tests/new">Plan the first series</ButtonLink>}
        >
          <p>
            A series is a number of test pieces, drilled to several depths and glued from at least three mixes, pulled
            in a random order. Five depths in three mixes take fifteen pieces and an evening.
          </p>
          <p>
            What it says of your wood, glue and wire then stands behind the rules of your models, once you accept it.
          </p>
        </EmptyState>
      ) : (
        <Table caption="Pull series" columns={columns(shop.timeZone)} rows={lines} rowKey={(line) => line.id} />
      )}
      <Pager
        page={page}
        pageCount={Math.ceil(total / PAGE_SIZE)}
        total={total}
        things="series"
        hrefOf={(to) => hrefWith('/pull-tests', { page: String(to) })}
      />
    </Page>
  );
}

function columns(zone: string): readonly Column<PullSeriesLine>[] {
  return [
    {
      id: 'name',
      title: 'Series',
      cell: (line) => (
        <Link
          href={`/pull-tests/${line.id}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {line.name}
        </Link>
      ),
    },
    {
      id: 'what',
      title: 'Of',
      isLong: true,
      cell: (line) => (line.kind === 'acceptance' ? 'pieces of a batch' : line.conditions.join('; ')),
    },
    { id: 'pulls', title: 'Pulled', isNumber: true, cell: (line) => `${line.pulls} of ${line.specimens}` },
    { id: 'made', title: 'Made', cell: (line) => dateText(line.createdAt, zone) },
    {
      id: 'status',
      title: 'State',
      cell: (line) =>
        line.isClosed ? (
          <StatusMark status="done">Closed</StatusMark>
        ) : (
          <StatusMark status={line.pulls === 0 ? 'draft' : 'running'}>
            {line.pulls === 0 ? 'Planned' : 'Open'}
          </StatusMark>
        ),
    },
  ];
}
