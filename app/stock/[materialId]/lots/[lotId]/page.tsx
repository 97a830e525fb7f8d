import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { hrefWith, PAGE_SIZE, readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { dayText } from '@/app/_ui/day-text';
import { DialogButton } from '@/app/_ui/dialog-button';
import { Page, Section } from '@/app/_ui/page';
import { Pager } from '@/app/_ui/pager';
import { SubmitButton } from '@/app/_ui/submit-button';
import { LotForm } from '@/app/stock/_components/lot-form';
import { stockText } from '@/lib/stock/stock-text';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { listOpenBatchHeads } from '@/prisma/data/batches';
import { findLot, type Lot } from '@/prisma/data/lots';
import { findMaterial, hasSheet, type Material } from '@/prisma/data/materials';
import { listMovementPage } from '@/prisma/data/stock';
import { removeLotAction, saveLotAction } from '../../actions';
import { LotSheet } from './_components/lot-sheet';
import { MoveForms } from './_components/move-forms';
import { MovementTable } from './_components/movement-table';

export const metadata: Metadata = { title: 'Lot' };

interface LotPageProps {
  readonly params: Promise<{ materialId: string; lotId: string }>;
  readonly searchParams: SearchParams;
}

/** One lot: what is left of it, its movements, where it went, and what is written on it. */
export default async function LotPage({ params, searchParams }: LotPageProps) {
  const [{ materialId, lotId }, { page, word }] = await Promise.all([params, readListQuery(searchParams)]);
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const [material, lot] = await Promise.all([findMaterial(database, materialId), findLot(database, lotId)]);
  if (material === null || lot === null || lot.materialId !== materialId) notFound();
  const [{ movements, total }, heads] = await Promise.all([
    listMovementPage(database, { lotId, page: page - 1, pageSize: PAGE_SIZE }),
    listOpenBatchHeads(database),
  ]);
  const batches = heads.map(({ id, number, modelName }) => ({ value: id, label: `${number}, ${modelName}` }));
  const here = `/stock/${materialId}/lots/${lotId}`;
  return (
    <Page
      title={`Lot ${lot.code}`}
      lead={mixText(material, lot)}
      up={{ href: `/stock/${materialId}`, label: material.name }}
      actions={
        lot.mixCount === 0 &&
        lot.movementCount === 0 && (
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
      <Section
        title={lot.isUsedUp ? 'Used up' : `${stockText(lot.left, lot.quantityUnit, shop)} left`}
        lead={`By the book, of ${stockText(lot.quantity, lot.quantityUnit, shop)} that came on ${dayText(lot.receivedOn)} and what came since.`}
        actions={<ButtonLink href={`${here}/trace`}>Where it went</ButtonLink>}
      >
        <MoveForms lot={lot} units={shop} currency={shop.currency} batches={batches} />
        {total === 0 ? (
          <p className="text-ink-soft">Nothing has moved since it came.</p>
        ) : (
          <MovementTable lot={lot} movements={movements} shop={shop} />
        )}
        <Pager
          page={page}
          pageCount={Math.ceil(total / PAGE_SIZE)}
          total={total}
          things="movements"
          hrefOf={(to) => hrefWith(here, { page: String(to) })}
        />
      </Section>
      <Section title="Data sheet">
        <LotSheet lot={lot} fault={word('sheet')} />
      </Section>
      <Section title="What is written on it">
        <LotForm
          material={material}
          lot={lot}
          today={wallTimeAt(now(), shop.timeZone).day}
          units={shop}
          currency={shop.currency}
          action={saveLotAction.bind(null, materialId, lotId)}
        />
      </Section>
    </Page>
  );
}

/** Only glues and coats go into mixes. */
function mixText({ kind }: Material, { mixCount }: Lot): string | undefined {
  if (mixCount > 0) return `Went into ${mixCount} ${mixCount === 1 ? 'mix' : 'mixes'}.`;
  return hasSheet(kind) ? 'Not in any mix yet.' : undefined;
}
