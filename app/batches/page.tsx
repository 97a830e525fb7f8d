import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page, Section } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { SearchForm } from '@/app/_ui/search-form';
import { db } from '@/prisma/client';
import { listBatchPage } from '@/prisma/data/batches';
import { FinishedTable } from './_components/finished-table';
import { OpenTable } from './_components/open-table';

export const metadata: Metadata = { title: 'Batches' };

/** Open batches with where they stand, and the finished ones page by page. */
export default async function BatchesPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { text, page, word } = await readListQuery(searchParams);
  const openPage = /^\d{1,6}$/.test(word('open')) ? Math.max(1, Number(word('open'))) : 1;
  const database = await db();
  const shop = await currentShop();
  const open = await listBatchPage(database, { status: 'open', text, page: openPage - 1, pageSize: PAGE_SIZE });
  const finished = await listBatchPage(database, { status: 'finished', text, page: page - 1, pageSize: PAGE_SIZE });
  const newBatch = (
    <ButtonLink href="/batches/new" weight="primary">
      New batch
    </ButtonLink>
  );
  if (open.total + finished.total === 0 && text === '') {
    return (
      <Page title="Batches">
        <EmptyState title="No batches yet" action={newBatch}>
          <p>
            A batch is a number of pieces of one model revision. Its pieces are numbered, and everything that happens to
            them is kept: which mix set which joint, when a coat went on, what was scrapped and why.
          </p>
        </EmptyState>
      </Page>
    );
  }
  const href = (words: Readonly<Record<string, string>>) =>
    hrefWith('/batches', {
      q: text,
      open: openPage > 1 ? String(openPage) : '',
      page: page > 1 ? String(page) : '',
      ...words,
    });
  return (
    <Page title="Batches" actions={newBatch}>
      <SearchForm label="Number, model or order note" text={text} />
      <Section title="Open">
        {open.total === 0 ? (
          <p className="text-ink-soft">{text === '' ? 'No batch is open.' : `No open batch matches “${text}”.`}</p>
        ) : (
          <OpenTable database={database} shop={shop} heads={open.heads} nowAt={now()} />
        )}
        <Pager
          page={openPage}
          pageCount={Math.ceil(open.total / PAGE_SIZE)}
          total={open.total}
          things="open batches"
          hrefOf={(to) => href({ open: String(to) })}
        />
      </Section>
      <Section title="Finished">
        {finished.total === 0 ? (
          <p className="text-ink-soft">
            {text === '' ? 'None is finished yet.' : `No finished batch matches “${text}”.`}
          </p>
        ) : (
          <FinishedTable heads={finished.heads} zone={shop.timeZone} />
        )}
        <Pager
          page={page}
          pageCount={Math.ceil(finished.total / PAGE_SIZE)}
          total={finished.total}
          things="finished batches"
          hrefOf={(to) => href({ page: String(to) })}
        />
      </Section>
    </Page>
  );
}
