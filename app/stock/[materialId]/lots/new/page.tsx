import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { Page } from '@/app/_ui/page';
import { LotForm } from '@/app/stock/_components/lot-form';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { findMaterial } from '@/prisma/data/materials';
import { addLotAction } from '../../actions';

export const metadata: Metadata = { title: 'New lot' };

export default async function NewLotPage({ params }: { readonly params: Promise<{ materialId: string }> }) {
  const { materialId } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const material = await findMaterial(database, materialId);
  if (material === null) notFound();
  return (
    <Page title={`New lot of ${material.name}`} up={{ href: `/stock/${materialId}`, label: material.name }}>
      <LotForm
        material={material}
        lot={null}
        today={wallTimeAt(now(), shop.timeZone).day}
        units={shop}
        currency={shop.currency}
        action={addLotAction.bind(null, materialId)}
      />
    </Page>
  );
}
