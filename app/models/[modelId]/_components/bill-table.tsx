import { Table } from '@/app/_ui/table';
import { lengthText, massText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { RevisionBillLine } from '@/prisma/data/revisions';

export interface BillTableProps {
  readonly lines: readonly RevisionBillLine[];
  readonly units: UnitChoice;
}

/** What goes into one piece. */
export function BillTable({ lines, units }: BillTableProps) {
  if (lines.length === 0) {
    return (
      <p className="max-w-2xl text-ink-soft">
        Nothing yet. List wood, wire, glue, coats, hooks and rings for one piece: shopping and cut lists are made from
        it.
      </p>
    );
  }
  return (
    <Table
      caption="Bill of one piece"
      rows={lines}
      rowKey={(line) => line.id}
      columns={[
        { id: 'material', title: 'Material', cell: (line) => line.material.name },
        { id: 'quantity', title: 'For one piece', cell: (line) => quantityOf(line, units), isNumber: true },
        { id: 'note', title: 'Note', cell: (line) => line.note || '–' },
      ]}
    />
  );
}

function quantityOf({ quantity, quantityUnit }: RevisionBillLine, units: UnitChoice): string {
  switch (quantityUnit) {
    case 'g':
      return massText(quantity, units.massUnit);
    case 'mm':
      return lengthText(quantity, units.lengthUnit);
    case 'pieces':
      return String(quantity);
  }
}
