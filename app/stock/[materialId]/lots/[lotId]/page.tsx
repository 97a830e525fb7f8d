import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { Page } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import { LotForm } from '@/app/stock/_components/lot-form';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import { findMaterial } from '@/prisma/data/materials';
import { removeLotAction, saveLotAction } from '../../actions';

export const metadata: Metadata = { title: 'Lot' };

interface LotPageProps {
  readonly params: Promise<{ materialId: string; lotId: string }>;
}

export default async function LotPage({ params }: LotPageProps) {
  const { materialId, lotId } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const [material, lot] = await Promise.all([findMaterial(database, materialId), findLot(database, lotId)]);
  if (material === null || lot === null || lot.materialId !== materialId) notFound();
  return (
    <Page
      title={`Lot ${lot.code}`}
      lead={lot.mixCount === 0 ? 'Not in any mix yet.' : `Went into ${lot.mixCount} mixes.`}
      up={{ href: `/stock/${materialId}`, label: material.name }}
      actions={
        lot.mixCount === 0 && (
          <DialogButton label="Remove" title={`Remove lot ${lot.code}?`} weight="remove">
            <ActionForm action={removeLotAction.bind(null, materialId, lotId)}>
              <p>For a lot that was entered by mistake. No mix was made from it, so nothing else changes.</p>
              <div>
                <SubmitButton weight="remove" pendingText="Removing…">
                  Remove it
                </SubmitButton>
              </div>
            </ActionForm>
          </DialogButton>
        )
      }
    >
      <LotForm
        material={material}
        lot={lot}
        today={wallTimeAt(now(), shop.timeZone).day}
        units={shop}
        currency={shop.currency}
        action={saveLotAction.bind(null, materialId, lotId)}
      />
    </Page>
  );
}
