import Link from 'next/link';
import { type Column, Table } from '@/app/_ui/table';
import { modeText } from '@/lib/pulltest/pull-mode';
import { forceText } from '@/lib/units/format-quantity';
import type { ForceUnit } from '@/lib/units/unit-choice';
import type { TracedPull } from '@/prisma/data/trace';

export interface PullTableProps {
  readonly pulls: readonly TracedPull[];
  readonly forceUnit: ForceUnit;
}

/** Pulls that a lot or a piece has part in. */
export function PullTable({ pulls, forceUnit }: PullTableProps) {
  if (pulls.length === 0) return <p className="text-ink-soft">None.</p>;
  const columns: readonly Column<TracedPull>[] = [
    {
      id: 'series',
      title: 'Series',
      cell: (pull) => (
        <Link
          href={`/pull-tests/${pull.seriesId}`}
          prefetch={false}
          className="inline-flex min-h-touch items-center underline underline-offset-4"
        >
          {pull.seriesName}
        </Link>
      ),
    },
    { id: 'specimen', title: 'Specimen', cell: (pull) => pull.specimen },
    {
      id: 'load',
      title: 'Load',
      cell: (pull) => (pull.loadN === null ? 'not read' : forceText(pull.loadN, forceUnit)),
      isNumber: true,
    },
    { id: 'mode', title: 'Gave way', cell: (pull) => modeText(pull.mode) },
  ];
  return <Table caption="Pulls" columns={columns} rows={pulls} rowKey={(pull) => pull.id} />;
}
