import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { SearchForm } from '@/app/_ui/search-form';
import { LotTable } from '@/app/stock/_components/lot-table';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { listLotPage } from '@/prisma/data/lots';

export const metadata: Metadata = { title: 'Lots' };

export default async function LotsPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { text, page, word } = await readListQuery(searchParams);
  const isExpired = word('state') === 'expired';
  const showsAll = word('state') === 'all';
  const state = isExpired ? 'expired' : showsAll ? 'all' : '';
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const today = wallTimeAt(now(), shop.timeZone).day;
  const { lots, total } = await listLotPage(database, {
    materialId: null,
    text,
    expiredBefore: isExpired ? today : null,
    hidesUsedUp: !showsAll,
    page: page - 1,
    pageSize: PAGE_SIZE,
  });
  return (
    <Page
      title={isExpired ? 'Expired lots' : 'Lots'}
      lead="Containers and bundles, the last received first."
      up={{ href: '/stock', label: 'Stock' }}
      actions={
        <>
          <ButtonLink href={hrefWith('/stock/lots', { state: isExpired ? '' : 'expired' })}>
            {isExpired ? 'Lots in use' : 'Expired only'}
          </ButtonLink>
          <ButtonLink href={hrefWith('/stock/lots', { state: showsAll ? '' : 'all' })}>
            {showsAll ? 'Without the used up' : 'With the used up'}
          </ButtonLink>
        </>
      }
    >
      <SearchForm label="Part of a lot code" text={text} kept={state === '' ? {} : { state }} />
      {total === 0 ? (
        <p className="text-ink-soft">No lots here. Lots are added on the page of their material.</p>
      ) : (
        <LotTable lots={lots} today={today} units={shop} showsMaterial />
      )}
      <Pager
        page={page}
        pageCount={Math.ceil(total / PAGE_SIZE)}
        total={total}
        things="lots"
        hrefOf={(to) => hrefWith('/stock/lots', { state, q: text, page: String(to) })}
      />
    </Page>
  );
}
