import Link from 'next/link';
import { type Column, Table } from '@/app/_ui/table';
import { stockText } from '@/lib/stock/stock-text';
import { dateClockText } from '@/lib/units/format-instant';
import { moneyText } from '@/lib/units/money';
import type { Lot } from '@/prisma/data/lots';
import type { ShopSettings } from '@/prisma/data/shop';
import type { StockMovement } from '@/prisma/data/stock';
import { CorrectForm } from './move-forms';

const KIND_TEXT: { readonly [K in StockMovement['kind']]: string } = {
  receipt: 'More came in',
  issue: 'Taken',
  count: 'Counted',
  correction: 'Put right',
};

export interface MovementTableProps {
  readonly lot: Lot;
  readonly movements: readonly StockMovement[];
  readonly shop: ShopSettings;
}

/** The lines of a lot's book, the newest first. */
export function MovementTable({ lot, movements, shop }: MovementTableProps) {
  const quantity = (value: number, sign = '') => (
    <span className="whitespace-nowrap">
      {sign}
      {stockText(value, lot.quantityUnit, shop)}
    </span>
  );
  const columns: readonly Column<StockMovement>[] = [
    {
      id: 'kind',
      title: 'Movement',
      cell: (line) => (
        <span className="whitespace-nowrap">
          {line.order}. {KIND_TEXT[line.kind]}
        </span>
      ),
    },
    {
      id: 'quantity',
      title: 'Quantity',
      cell: (line) => quantity(line.quantity, line.quantity > 0 ? '+' : ''),
      isNumber: true,
    },
    { id: 'left', title: 'Left then', cell: (line) => quantity(line.left), isNumber: true },
    { id: 'at', title: 'When', cell: (line) => dateClockText(line.at, shop.timeZone) },
    { id: 'why', title: 'What for', cell: (line) => <Why line={line} currency={shop.currency} />, isLong: true },
    { id: 'who', title: 'Who', cell: (line) => line.personName ?? '–' },
    {
      id: 'right',
      title: '',
      cell: (line) =>
        (line.kind === 'issue' || line.kind === 'receipt') &&
        line.mixId === null && <CorrectForm lot={lot} movement={line} units={shop} />,
    },
  ];
  return <Table caption="Movements" columns={columns} rows={movements} rowKey={(line) => line.id} />;
}

function Why({ line, currency }: { readonly line: StockMovement; readonly currency: string }) {
  const { batch, reason, correctsOrder, priceMinor } = line;
  return (
    <>
      {batch !== null && (
        <>
          <Link
            href={`/batches/${batch.id}`}
            prefetch={false}
            className="inline-flex min-h-touch items-center underline underline-offset-4"
          >
            Batch {batch.number}
          </Link>{' '}
        </>
      )}
      {correctsOrder !== null && `Of movement ${correctsOrder}. `}
      {reason}
      {priceMinor !== null && ` ${moneyText(priceMinor, currency)}`}
    </>
  );
}
