import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { Page, Section } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { StatusMark } from '@/app/_ui/status-mark';
import { LotTable } from '@/app/stock/_components/lot-table';
import { KIND_WORDS } from '@/app/stock/_components/words';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { listLotPage } from '@/prisma/data/lots';
import { findMaterial, hasSheet, strengthKindOf } from '@/prisma/data/materials';
import { listStockOrders } from '@/prisma/data/stock-orders';
import { BuyingForm } from './_components/buying-form';
import { MaterialCare } from './_components/material-care';
import { OrderList } from './_components/order-list';
import { SheetView } from './_components/sheet-view';
import { StrengthView } from './_components/strength-view';

interface MaterialPageProps {
  readonly params: Promise<{ materialId: string }>;
  readonly searchParams: SearchParams;
}

export async function generateMetadata({ params }: MaterialPageProps): Promise<Metadata> {
  const material = await findMaterial(await db(), (await params).materialId);
  return { title: material?.name ?? 'Not found' };
}

export default async function MaterialPage({ params, searchParams }: MaterialPageProps) {
  const [{ materialId }, { page }, shop, database] = await Promise.all([
    params,
    readListQuery(searchParams),
    currentShop(),
    db(),
  ]);
  const material = await findMaterial(database, materialId);
  if (material === null) notFound();
  const today = wallTimeAt(now(), shop.timeZone).day;
  const { lots, total } = await listLotPage(database, {
    materialId,
    text: '',
    expiredBefore: null,
    page: page - 1,
    pageSize: PAGE_SIZE,
  });
  return (
    <Page
      title={material.name}
      lead={`${capital(KIND_WORDS[material.kind])}. ${material.note}`}
      up={{ href: '/stock', label: 'Stock' }}
      actions={material.isArchived && <StatusMark status="archived" />}
    >
      {hasSheet(material.kind) && (
        <Section
          title="Data sheet"
          lead="Every clock of this material is computed from these figures. Mixes keep the figures they were made with."
          actions={
            <ButtonLink href={`/stock/${materialId}/sheet`}>
              {material.sheet === null ? 'Enter the data sheet' : 'Change'}
            </ButtonLink>
          }
        >
          <SheetView material={material} units={shop} />
        </Section>
      )}
      {strengthKindOf(material.kind) !== null && (
        <Section
          title="Strength"
          lead="What the rules of every model with it are judged by."
          actions={
            <ButtonLink href={`/stock/${materialId}/strength`}>
              {material.strength === null ? 'Enter the figures' : 'Change'}
            </ButtonLink>
          }
        >
          <StrengthView material={material} units={shop} />
        </Section>
      )}
      <Section
        title="Lots"
        lead="Containers and bundles, the last received first."
        actions={<ButtonLink href={`/stock/${materialId}/lots/new`}>Add a lot</ButtonLink>}
      >
        {total === 0 ? (
          <p className="max-w-2xl text-ink-soft">
            None yet. Write down the code on the container when it comes in: a mix can then say what was in the cup.
          </p>
        ) : (
          <LotTable lots={lots} today={today} units={shop} />
        )}
        <Pager
          page={page}
          pageCount={Math.ceil(total / PAGE_SIZE)}
          total={total}
          things="lots"
          hrefOf={(to) => hrefWith(`/stock/${materialId}`, { page: String(to) })}
        />
      </Section>
      <Section
        title="Ordered"
        lead="The plan has what is short wait for it. When it comes, add the lot and take the order out."
      >
        <OrderList
          material={material}
          orders={await listStockOrders(database, [materialId])}
          today={today}
          shop={shop}
        />
      </Section>
      <Section title="Buying" lead="What it costs and when to order. A lot keeps the price that was paid for it.">
        <BuyingForm material={material} shop={shop} />
      </Section>
      <Section title="Name and keeping">
        <MaterialCare material={material} />
      </Section>
    </Page>
  );
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
