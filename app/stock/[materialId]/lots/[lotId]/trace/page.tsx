import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { type RecallPiece, recallOfLot } from '@/app/_server/recall';
import { currentShop } from '@/app/_server/shop';
import { buttonClass } from '@/app/_ui/button-class';
import { Page, Section } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { PART_WORDS } from '@/app/stock/_components/words';
import { PullTable } from '@/app/stock/trace/_components/pull-table';
import { db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';

export const metadata: Metadata = { title: 'Where a lot went' };

/** The recall list of a lot: every piece it went into, whose order that was, and what was pulled of it. */
export default async function LotTracePage({
  params,
}: {
  readonly params: Promise<{ materialId: string; lotId: string }>;
}) {
  const { materialId, lotId } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const lot = await findLot(database, lotId);
  if (lot === null || lot.materialId !== materialId) notFound();
  const { mixes, pieces, jointCount, pulls, orderNumbers } = await recallOfLot(database, lot);
  const here = `/stock/${materialId}/lots/${lotId}`;
  const part = lot.part === 'whole' ? '' : `, ${PART_WORDS[lot.part]}`;
  return (
    <Page
      title={`Where lot ${lot.code} went`}
      lead={`${lot.materialName}${part}. ${countText(mixes.length, 'mix', 'mixes')}, ${countText(jointCount, 'joint', 'joints')}, ${countText(pieces.length, 'piece', 'pieces')}, ${countText(pulls.length, 'pull', 'pulls')}.`}
      up={{ href: here, label: `Lot ${lot.code}` }}
      actions={
        <>
          <PrintButton />
          <a href={`${here}/trace/csv`} download className={`${buttonClass('plain')} print:hidden`}>
            Save as CSV
          </a>
        </>
      }
    >
      <Section title="Orders" lead="Buyers whose pieces hold something of this lot.">
        <p>{orderNumbers.length === 0 ? 'No order number is written on these pieces.' : orderNumbers.join(', ')}</p>
      </Section>
      <Section
        title="Pieces"
        lead="A lot taken for a whole batch may be in any of its pieces, so all of them are listed."
      >
        {pieces.length === 0 ? (
          <p className="text-ink-soft">It is in no piece: no mix names it and no batch took from it.</p>
        ) : (
          <Table caption="Pieces" columns={COLUMNS} rows={pieces} rowKey={keyOf} />
        )}
      </Section>
      <Section title="Pulls">
        <PullTable pulls={pulls} forceUnit={shop.forceUnit} />
      </Section>
    </Page>
  );
}

function countText(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

const keyOf = ({ batch, number }: RecallPiece) => `${batch.id}-${number}`;

const COLUMNS: readonly Column<RecallPiece>[] = [
  {
    id: 'piece',
    title: 'Piece',
    cell: ({ batch, number }) => (
      <Link
        href={`/batches/${batch.id}/pieces/${number}`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        {batch.number}-{number}
      </Link>
    ),
  },
  { id: 'model', title: 'Model', cell: ({ batch }) => `${batch.modelName} ${batch.letter}` },
  { id: 'order', title: 'Order', cell: ({ orderNumber }) => (orderNumber === '' ? '–' : orderNumber) },
  {
    id: 'places',
    title: 'Where in it',
    cell: ({ places }) => (places.length === 0 ? 'taken for the whole batch' : places.join(', ')),
    isLong: true,
  },
  {
    id: 'state',
    title: 'State',
    cell: ({ isScrapped, batch }) =>
      isScrapped ? (
        <StatusMark status="scrapped" />
      ) : batch.status === 'finished' ? (
        <StatusMark status="done">Finished</StatusMark>
      ) : (
        <StatusMark status="running">In the shop</StatusMark>
      ),
  },
];
