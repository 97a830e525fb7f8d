import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { type BatchCost, type BillUse, type LotUse, loadBatchCost } from '@/app/_server/batch-cost';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import { TextAreaField, TextField } from '@/app/_ui/field';
import { Card, Page, Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { type Column, Table } from '@/app/_ui/table';
import { PART_WORDS } from '@/app/stock/_components/words';
import { stockText } from '@/lib/stock/stock-text';
import { durationText } from '@/lib/units/format-duration';
import { MINUTE_MS } from '@/lib/units/instant';
import { moneyText } from '@/lib/units/money';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { type Lot, listUsableLots } from '@/prisma/data/lots';
import { listPieceOrders } from '@/prisma/data/piece-orders';
import type { ShopSettings } from '@/prisma/data/shop';
import { TakeForms } from './_components/take-forms';
import { saveOrderNumbersAction } from './actions';

export const metadata: Metadata = { title: 'Used' };

/** What a batch took, by lot, what it still needs, what it cost, and whose order it is. */
export default async function UsedPage({ params }: PageProps<'/batches/[batchId]/used'>) {
  const { batchId } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const loaded = await loadBatchCost(database, batchId);
  if (loaded === null) notFound();
  const { batch, uses, bill, cost, goodPieces } = loaded;
  const today = wallTimeAt(now(), shop.timeZone).day;
  const lots = await listUsableLots(
    database,
    bill.map((line) => line.materialId),
    today,
  );
  const orders = await listPieceOrders(database, batchId);
  const money = (minor: number) => moneyText(minor, shop.currency);
  const unpriced = uses.filter((use) => use.costMinor === null);
  const least = unpriced.length > 0 || loaded.labourPerHourMinor === null ? 'at least ' : '';
  return (
    <Page
      title={`Used by batch ${batch.number}`}
      lead={`${batch.modelName}, revision ${batch.letter}. Cups take from their lots by themselves; everything else is taken here.`}
      up={{ href: `/batches/${batchId}`, label: `Batch ${batch.number}` }}
      actions={<ButtonLink href={`/models/${batch.modelId}/cost?revision=${batch.letter}`}>Standard cost</ButtonLink>}
    >
      <Section
        title="Bill"
        lead={`For ${goodPieces} ${goodPieces === 1 ? 'piece' : 'pieces'} that are not scrapped, and what was taken of it.`}
      >
        {bill.length === 0 ? (
          <p className="text-ink-soft">The revision has no bill.</p>
        ) : (
          <Table
            caption="Bill"
            columns={billColumns(batchId, lots, shop)}
            rows={bill}
            rowKey={(line) => `${line.materialId}-${line.unit}`}
          />
        )}
      </Section>
      <Section title="Taken, by lot">
        {uses.length === 0 ? (
          <p className="text-ink-soft">Nothing yet.</p>
        ) : (
          <Table caption="Taken, by lot" columns={lotColumns(shop)} rows={uses} rowKey={(use) => use.lot.id} />
        )}
      </Section>
      <Section
        title={batch.status === 'finished' ? 'What it cost' : 'What it cost so far'}
        lead="Every lot at the price paid for it."
      >
        <p>
          {least}
          <strong>{money(cost.totalMinor)}</strong>: {money(cost.materialsMinor)} material
          {loaded.labourPerHourMinor === null
            ? '; no hourly rate is set, so work is not counted'
            : ` and ${money(cost.labourMinor)} work (${durationText(loaded.attendedMinutes * MINUTE_MS)} by the route)`}
          .{eachText(loaded, least, money)}
        </p>
        {unpriced.length > 0 && (
          <p className="text-ink-soft">
            No price is written down for {unpriced.map((use) => use.lot.code).join(', ')}.
          </p>
        )}
      </Section>
      <Section title="Orders" lead="Whose pieces these are: found again when a lot turns out bad.">
        <Card className="max-w-3xl">
          <ActionForm action={saveOrderNumbersAction.bind(null, batchId)}>
            <TextField
              name="orderNumber"
              label="Buyer’s order number"
              isOptional
              maxLength={60}
              defaultValue={orders.orderNumber}
            />
            <TextAreaField
              name="pieces"
              label="Pieces of another order"
              hint="A line for each: 7-12 4711"
              isOptional
              maxLength={4000}
              defaultValue={orders.lines.join('\n')}
            />
            <div>
              <SubmitButton>Save the orders</SubmitButton>
            </div>
          </ActionForm>
        </Card>
      </Section>
    </Page>
  );
}

function eachText({ cost, goodPieces }: BatchCost, least: string, money: (minor: number) => string): string {
  if (cost.perGoodPieceMinor === null) return ' No piece is good.';
  return ` That is ${least}${money(cost.perGoodPieceMinor)} for each of ${goodPieces} good pieces, the scrapped ones paid by them.`;
}

function billColumns(batchId: string, lots: readonly Lot[], shop: ShopSettings): readonly Column<BillUse>[] {
  const text = (line: BillUse, quantity: number) => stockText(quantity, line.unit, shop);
  const ofLine = (line: BillUse) =>
    lots.filter((lot) => lot.materialId === line.materialId && lot.quantityUnit === line.unit);
  const leftOf = (line: BillUse) => ofLine(line).reduce((sum, lot) => sum + lot.left, 0);
  return [
    {
      id: 'material',
      title: 'Material',
      cell: (line) => (
        <Link
          href={`/stock/${line.materialId}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {line.materialName}
        </Link>
      ),
    },
    { id: 'needed', title: 'Needed', cell: (line) => text(line, line.needed), isNumber: true },
    { id: 'taken', title: 'Taken', cell: (line) => text(line, line.taken), isNumber: true },
    {
      id: 'missing',
      title: 'Still to take',
      cell: (line) => (line.missing === 0 ? <StatusMark status="done" /> : text(line, line.missing)),
      isNumber: true,
    },
    {
      id: 'left',
      title: 'In stock',
      cell: (line) => (
        <>
          {text(line, leftOf(line))}{' '}
          {leftOf(line) < line.missing && ofLine(line).every((lot) => lot.part === 'whole') && (
            <StatusMark status="late">{text(line, line.missing - leftOf(line))} short</StatusMark>
          )}
        </>
      ),
      isNumber: true,
    },
    {
      id: 'take',
      title: '',
      cell: (line) =>
        ofLine(line).length === 0 ? (
          'no lot'
        ) : (
          <TakeForms
            batchId={batchId}
            materialName={line.materialName}
            missing={line.missing}
            lots={ofLine(line)}
            units={shop}
          />
        ),
    },
  ];
}

function lotColumns(shop: ShopSettings): readonly Column<LotUse>[] {
  return [
    {
      id: 'lot',
      title: 'Lot',
      cell: ({ lot }) => (
        <Link
          href={`/stock/${lot.materialId}/lots/${lot.id}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {lot.code}
        </Link>
      ),
    },
    {
      id: 'material',
      title: 'Material',
      cell: ({ lot }) => `${lot.materialName}${lot.part === 'whole' ? '' : `, ${PART_WORDS[lot.part]}`}`,
    },
    {
      id: 'taken',
      title: 'Taken',
      cell: ({ lot, taken }) => stockText(taken, lot.quantityUnit, shop),
      isNumber: true,
    },
    {
      id: 'cost',
      title: 'Cost',
      cell: ({ costMinor }) => (costMinor === null ? 'no price' : moneyText(costMinor, shop.currency)),
      isNumber: true,
    },
  ];
}
