import Link from 'next/link';
import { dayText } from '@/app/_ui/day-text';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { stockText } from '@/lib/stock/stock-text';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Lot } from '@/prisma/data/lots';
import { PART_WORDS } from './words';

export interface LotTableProps {
  readonly lots: readonly Lot[];
  /** YYYY-MM-DD in the shop. */
  readonly today: string;
  readonly units: UnitChoice;
  readonly showsMaterial?: boolean;
}

/** Lots with what is in them and whether they are still good. */
export function LotTable({ lots, today, units, showsMaterial = false }: LotTableProps) {
  const material: Column<Lot> = {
    id: 'material',
    title: 'Material',
    cell: (lot) => (
      <Link
        href={`/stock/${lot.materialId}`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        {lot.materialName}
      </Link>
    ),
  };
  const code: Column<Lot> = {
    id: 'code',
    title: 'Lot',
    cell: (lot) => (
      <Link
        href={`/stock/${lot.materialId}/lots/${lot.id}`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        {lot.code}
      </Link>
    ),
  };
  return (
    <Table
      caption="Lots"
      rows={lots}
      rowKey={(lot) => lot.id}
      columns={[
        code,
        ...(showsMaterial ? [material] : []),
        { id: 'part', title: 'Part', cell: (lot) => PART_WORDS[lot.part] },
        { id: 'left', title: 'Left', cell: (lot) => <Left lot={lot} units={units} />, isNumber: true },
        {
          id: 'quantity',
          title: 'First bought',
          cell: (lot) => stockText(lot.quantity, lot.quantityUnit, units),
          isNumber: true,
        },
        { id: 'received', title: 'Received', cell: (lot) => dayText(lot.receivedOn) },
        { id: 'opened', title: 'Opened', cell: (lot) => (lot.openedOn === null ? 'not yet' : dayText(lot.openedOn)) },
        { id: 'expires', title: 'Good until', cell: (lot) => <Expiry lot={lot} today={today} /> },
        { id: 'mixes', title: 'Mixes', cell: (lot) => lot.mixCount, isNumber: true },
      ]}
    />
  );
}

function Expiry({ lot, today }: { readonly lot: Lot; readonly today: string }) {
  if (lot.expiresOn === null) return <span className="text-ink-soft">not said</span>;
  if (lot.expiresOn >= today) return <>{dayText(lot.expiresOn)}</>;
  return <StatusMark status="expired">Expired {dayText(lot.expiresOn)}</StatusMark>;
}

function Left({ lot, units }: { readonly lot: Lot; readonly units: UnitChoice }) {
  if (lot.isUsedUp) return <StatusMark status="done">Used up</StatusMark>;
  return <>{stockText(lot.left, lot.quantityUnit, units)}</>;
}
