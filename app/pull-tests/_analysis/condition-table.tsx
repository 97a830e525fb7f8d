import { type Column, Table } from '@/app/_ui/table';
import type { ConditionComparison } from '@/lib/pulltest/condition-comparison';
import { percentText, pText } from '@/lib/pulltest/pull-words';

/** How the materials that a series compares hold against each other. */
export function ConditionTable({ comparisons }: { readonly comparisons: readonly ConditionComparison[] }) {
  return (
    <Table
      caption="Materials against each other"
      columns={COLUMNS}
      rows={comparisons}
      rowKey={({ condition }) => condition}
    />
  );
}

const COLUMNS: readonly Column<ConditionComparison>[] = [
  { id: 'what', title: 'Of', cell: ({ condition, against }) => `${condition}, against ${against}` },
  { id: 'says', title: 'Holds', isLong: true, cell: says },
];

function says(row: ConditionComparison): string {
  if (row.ok) {
    const { ratio, from, to, p, basis } = row;
    const share = (value: number) => percentText(value);
    const how = basis === 'within' ? 'in shared mixes' : 'mixes of its own against mixes of its own';
    return `${share(ratio)} of it (95 % between ${share(from)} and ${share(to)}; ${pText(p)}, ${how}).`;
  }
  switch (row.code) {
    case 'no-common-depth':
      return 'Cannot be told: no depth was pulled of both.';
    case 'has-bounds':
      return 'Cannot be told while some readings only say "at least".';
    case 'too-few-readings':
      return 'Cannot be told from so few.';
    case 'no-scatter':
      return 'Cannot be told: the readings do not scatter at all. Look for a slip of the pen.';
  }
}
