import Link from 'next/link';
import { type Column, Table } from '@/app/_ui/table';
import { dateText } from '@/lib/units/format-instant';
import type { BatchHead } from '@/prisma/data/batches';

/** A batch's number and model as the link to its page. */
export function BatchName({ head }: { readonly head: BatchHead }) {
  return (
    <Link
      href={`/batches/${head.id}`}
      prefetch={false}
      className="inline-flex min-h-touch items-center underline underline-offset-4"
    >
      {head.number}: {head.modelName} {head.letter}
    </Link>
  );
}

/** Finished batches, newest number first. */
export function FinishedTable({ heads, zone }: { readonly heads: readonly BatchHead[]; readonly zone: string }) {
  const columns: readonly Column<BatchHead>[] = [
    { id: 'name', title: 'Batch', cell: (head) => <BatchName head={head} /> },
    { id: 'pieces', title: 'Pieces', cell: (head) => head.quantity, isNumber: true },
    {
      id: 'finished',
      title: 'Finished',
      cell: (head) => (head.finishedAt === null ? '' : dateText(head.finishedAt, zone)),
    },
    { id: 'note', title: 'Order note', cell: (head) => head.orderNote },
  ];
  return <Table caption="Finished batches" columns={columns} rows={heads} rowKey={(head) => head.id} />;
}
