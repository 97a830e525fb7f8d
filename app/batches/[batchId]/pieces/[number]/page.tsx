import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { loadPiece, type PiecePlace } from '@/app/_server/piece-page';
import { currentShop } from '@/app/_server/shop';
import { Page, Section } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { PART_WORDS } from '@/app/stock/_components/words';
import { PullTable } from '@/app/stock/trace/_components/pull-table';
import { stockText } from '@/lib/stock/stock-text';
import { dateClockText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import type { Lot } from '@/prisma/data/lots';

export const metadata: Metadata = { title: 'Piece' };

/** One piece: its joints and coats with the cups and lots they came from, what its batch took, and its pulls. */
export default async function PiecePage({ params }: PageProps<'/batches/[batchId]/pieces/[number]'>) {
  const { batchId, number: word } = await params;
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const number = /^\d{1,4}$/.test(word) ? Number(word) : 0;
  const piece = await loadPiece(database, batchId, number);
  if (piece === null) notFound();
  const { batch, orderNumber, scrapReason, places, batchLots, done, pulls } = piece;
  const when = (at: number) => dateClockText(at, shop.timeZone);
  const columns: readonly Column<PiecePlace>[] = [
    { id: 'name', title: 'Joint or coat', cell: ({ name }) => name },
    { id: 'mix', title: 'Mix', cell: ({ mix }) => `${mix.number}, ${mix.materialName}` },
    { id: 'lots', title: 'Lots', cell: ({ lots }) => <LotLinks lots={lots} />, isLong: true },
    {
      id: 'mixed',
      title: 'Mixed',
      cell: ({ mix, isLate }) => (
        <>
          {when(mix.mixedAt)} {isLate && <StatusMark status="late">used late</StatusMark>}
        </>
      ),
    },
  ];
  return (
    <Page
      title={`Piece ${batch.number}-${number}`}
      lead={`${batch.modelName}, revision ${batch.letter}.${orderNumber === '' ? '' : ` Order ${orderNumber}.`}`}
      up={{ href: `/batches/${batchId}`, label: `Batch ${batch.number}` }}
      actions={<PrintButton />}
    >
      {scrapReason !== null && (
        <p>
          <StatusMark status="scrapped">Scrapped: {scrapReason}</StatusMark>
        </p>
      )}
      <Section title="Joints and coats">
        {places.length === 0 ? (
          <p className="text-ink-soft">Nothing is glued or coated yet.</p>
        ) : (
          <Table
            caption="Joints and coats"
            columns={columns}
            rows={places}
            rowKey={({ name, mix }) => `${name}-${mix.mixId}`}
          />
        )}
      </Section>
      <Section title="Taken for its batch" lead="Which of these went into this very piece is not written down.">
        {batchLots.length === 0 ? (
          <p className="text-ink-soft">Nothing.</p>
        ) : (
          <ul className="grid gap-1">
            {batchLots.map(({ lot, taken }) => (
              <li key={lot.id}>
                {stockText(taken, lot.quantityUnit, shop)} {lot.materialName}, <LotLinks lots={[lot]} />
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="Done on it">
        {done.length === 0 ? (
          <p className="text-ink-soft">Nothing yet.</p>
        ) : (
          <ul className="grid gap-1">
            {done.map(({ name, at }) => (
              <li key={name}>
                {name}: {when(at)}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="Pulls" lead="On this piece, or on coupons of its mixes.">
        <PullTable pulls={pulls} forceUnit={shop.forceUnit} />
      </Section>
    </Page>
  );
}

function LotLinks({ lots }: { readonly lots: readonly Lot[] }) {
  if (lots.length === 0) return <>not noted</>;
  return lots.map((lot, index) => (
    <span key={lot.id}>
      {index > 0 && ', '}
      <Link
        href={`/stock/${lot.materialId}/lots/${lot.id}/trace`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        lot {lot.code}
        {lot.part === 'whole' ? '' : ` ${PART_WORDS[lot.part]}`}
      </Link>
    </span>
  ));
}
