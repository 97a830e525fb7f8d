import Link from 'next/link';
import type { BillUse } from '@/app/_server/batch-cost';
import type { OutlookLine } from '@/app/_server/stock-outlook';
import { StatusMark } from '@/app/_ui/status-mark';
import { Table } from '@/app/_ui/table';
import { fromMilli } from '@/lib/stock/ledger';
import { stockText } from '@/lib/stock/stock-text';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface PickListProps {
  readonly batchId: string;
  readonly bill: readonly BillUse[];
  readonly outlook: readonly OutlookLine[];
  readonly units: UnitChoice;
}

/** What to fetch for the batch, what lies there, and what is short. */
export function PickList({ batchId, bill, outlook, units }: PickListProps) {
  if (bill.length === 0)
    return <p className="text-ink-soft">The revision has no bill, so there is nothing to fetch.</p>;
  const linesOf = (line: BillUse) =>
    outlook.filter(({ material, unit, needs }) => {
      const isOurs = needs.some((need) => need.batchId === batchId);
      return material.id === line.materialId && unit === line.unit && isOurs;
    });
  return (
    <Table
      caption="What to fetch"
      rows={bill}
      rowKey={(line) => `${line.materialId} ${line.unit}`}
      columns={[
        {
          id: 'material',
          title: 'Material',
          cell: (line) => (
            <Link href={`/stock/${line.materialId}`} prefetch={false} className="underline underline-offset-4">
              {line.materialName}
            </Link>
          ),
        },
        {
          id: 'fetch',
          title: 'To fetch',
          isNumber: true,
          cell: (line) => stockText(line.missing, line.unit, units),
        },
        {
          id: 'left',
          title: 'In stock',
          isNumber: true,
          cell: (line) =>
            linesOf(line).map(({ part, outlook: own }) => (
              <span key={part} className="block">
                {own === null ? 'cannot be told' : stockText(fromMilli(own.leftMilli), line.unit, units)}
                {part === 'whole' ? '' : ` ${part}`}
              </span>
            )),
        },
        {
          id: 'short',
          title: '',
          cell: (line) =>
            linesOf(line).some(({ outlook: own }) => own?.shortage !== null && own !== null) ? (
              <StatusMark status="short">Short, with all open batches</StatusMark>
            ) : null,
        },
      ]}
    />
  );
}
