import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { SearchForm } from '@/app/_ui/search-form';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { MATERIAL_KINDS } from '@/lib/contracts/material-forms';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { listLotPage } from '@/prisma/data/lots';
import { hasSheet, listMaterialPage, type MaterialLine } from '@/prisma/data/materials';
import { KindFilter } from './_components/kind-filter';
import { OnHandText } from './_components/on-hand-text';
import { KIND_WORDS } from './_components/words';

export const metadata: Metadata = { title: 'Stock' };

export default async function StockPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { text, page, isArchived, word } = await readListQuery(searchParams);
  const kind = MATERIAL_KINDS.find((known) => known === word('kind')) ?? null;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const today = wallTimeAt(now(), shop.timeZone).day;
  const [{ lines, total }, expired] = await Promise.all([
    listMaterialPage(database, { kind, text, isArchived, page: page - 1, pageSize: PAGE_SIZE }),
    listLotPage(database, { materialId: null, text: '', expiredBefore: today, page: 0, pageSize: 1 }),
  ]);
  const archived = isArchived ? '1' : '';
  return (
    <Page
      title={isArchived ? 'Archived materials' : 'Stock'}
      lead="What you buy, the lots it came in, and the figures of your glues and coats."
      actions={
        <>
          <ButtonLink href={hrefWith('/stock', { archived: isArchived ? '' : '1' })}>
            {isArchived ? 'Materials in use' : 'Archived'}
          </ButtonLink>
          <ButtonLink href="/stock/lots">All lots</ButtonLink>
          <ButtonLink href="/stock/shortages">Shortages</ButtonLink>
          <ButtonLink href="/stock/trace">Trace</ButtonLink>
          <ButtonLink href="/stock/import">Import a list</ButtonLink>
          <ButtonLink href="/stock/new" weight="primary">
            New material
          </ButtonLink>
        </>
      }
    >
      {expired.total > 0 && (
        <p className="flex flex-wrap items-center gap-x-3">
          <StatusMark status="expired">
            {expired.total === 1 ? 'One lot has' : `${expired.total} lots have`} expired
          </StatusMark>
          <Link
            href="/stock/lots?state=expired"
            prefetch={false}
            className="inline-flex min-h-touch items-center underline underline-offset-4"
          >
            Show
          </Link>
        </p>
      )}
      <KindFilter kind={kind} text={text} archived={archived} />
      <SearchForm
        label="Part of a name"
        text={text}
        kept={{ ...(kind === null ? {} : { kind }), ...(isArchived ? { archived } : {}) }}
      />
      {total === 0 ? (
        <Nothing isSearch={text !== '' || kind !== null || isArchived} />
      ) : (
        <Table caption="Materials" columns={columns(shop)} rows={lines} rowKey={(line) => line.id} />
      )}
      <Pager
        page={page}
        pageCount={Math.ceil(total / PAGE_SIZE)}
        total={total}
        things="materials"
        hrefOf={(to) => hrefWith('/stock', { kind: kind ?? '', q: text, archived, page: String(to) })}
      />
    </Page>
  );
}

function Nothing({ isSearch }: { readonly isSearch: boolean }) {
  if (isSearch) return <p className="text-ink-soft">Nothing here fits.</p>;
  return (
    <EmptyState title="Nothing in Stock yet" action={<ButtonLink href="/stock/new">Add the first material</ButtonLink>}>
      <p>
        Begin with the glue in your cup: its data sheet gives the pot life and the hours to sanding, painting and
        pulling. Then add woods, wires and hardware, so that models can name them.
      </p>
      <p>A lot is one container or bundle. With lots, a weak joint can be traced to the can it came from.</p>
    </EmptyState>
  );
}

const columns = (units: UnitChoice): readonly Column<MaterialLine>[] => [
  {
    id: 'name',
    title: 'Material',
    cell: (line) => (
      <Link
        href={`/stock/${line.id}`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        {line.name}
      </Link>
    ),
  },
  { id: 'kind', title: 'Kind', cell: (line) => KIND_WORDS[line.kind] },
  {
    id: 'sheet',
    title: 'Data sheet',
    cell: (line) =>
      !hasSheet(line.kind) ? '–' : line.hasFigures ? 'entered' : <StatusMark status="late">Missing</StatusMark>,
  },
  { id: 'left', title: 'Left', cell: (line) => <OnHandText line={line} units={units} />, isNumber: true },
  { id: 'lots', title: 'Lots', cell: (line) => line.lotCount, isNumber: true },
];
