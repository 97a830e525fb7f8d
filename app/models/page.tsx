import type { Metadata } from 'next';
import Link from 'next/link';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { SearchForm } from '@/app/_ui/search-form';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { lengthText } from '@/lib/units/format-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import { db } from '@/prisma/client';
import { listModelPage, type ModelLine } from '@/prisma/data/models';

export const metadata: Metadata = { title: 'Models' };

export default async function ModelsPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { text, page, isArchived } = await readListQuery(searchParams);
  const shop = await currentShop();
  const { lines, total } = await listModelPage(await db(), { text, isArchived, page: page - 1, pageSize: PAGE_SIZE });
  const archived = isArchived ? '1' : '';
  return (
    <Page
      title={isArchived ? 'Archived models' : 'Models'}
      lead="What you make, as frozen revisions: a batch is always of one of them."
      actions={
        <>
          <ButtonLink href={hrefWith('/models', { archived: isArchived ? '' : '1' })}>
            {isArchived ? 'Models in use' : 'Archived'}
          </ButtonLink>
          <ButtonLink href="/models/new" weight="primary">
            New model
          </ButtonLink>
        </>
      }
    >
      {total === 0 && text === '' ? (
        <NothingYet isArchived={isArchived} />
      ) : (
        <>
          <SearchForm label="Part of a name" text={text} kept={isArchived ? { archived } : {}} />
          {total === 0 ? (
            <p>No model has “{text}” in its name.</p>
          ) : (
            <Table caption="Models" columns={columns(shop.lengthUnit)} rows={lines} rowKey={(line) => line.id} />
          )}
          <Pager
            page={page}
            pageCount={Math.ceil(total / PAGE_SIZE)}
            total={total}
            things="models"
            hrefOf={(to) => hrefWith('/models', { q: text, archived, page: String(to) })}
          />
        </>
      )}
    </Page>
  );
}

function NothingYet({ isArchived }: { readonly isArchived: boolean }) {
  if (isArchived) return <p className="text-ink-soft">No model was put away.</p>;
  return (
    <EmptyState title="No models yet" action={<ButtonLink href="/models/new">Make the first model</ButtonLink>}>
      <p>
        A model is a lure as you make it: the body, its anchors, the route from blank to finished lure, and what goes
        into one piece. The route is what the bench works by: it says which coat has to be how hard before the next
        step.
      </p>
      <p>
        When a model is right, freeze it. A frozen revision never changes, so a batch made last winter can be understood
        next winter. What you change after that is the next revision.
      </p>
    </EmptyState>
  );
}

function columns(lengthUnit: LengthUnit): Column<ModelLine>[] {
  return [
    {
      id: 'name',
      title: 'Model',
      cell: (line) => (
        <Link
          href={`/models/${line.id}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {line.name}
        </Link>
      ),
    },
    {
      id: 'revision',
      title: 'Newest revision',
      cell: (line) => (
        <span className="inline-flex items-baseline gap-3">
          {line.letter} <StatusMark status={line.isFrozen ? 'frozen' : 'draft'} />
        </span>
      ),
    },
    { id: 'wood', title: 'Wood', cell: (line) => line.woodName ?? 'not chosen' },
    { id: 'length', title: 'Length', cell: (line) => lengthText(line.lengthMm, lengthUnit), isNumber: true },
    { id: 'anchors', title: 'Anchors', cell: (line) => line.anchorCount, isNumber: true },
    { id: 'batches', title: 'Open batches', cell: (line) => line.openBatchCount, isNumber: true },
  ];
}
