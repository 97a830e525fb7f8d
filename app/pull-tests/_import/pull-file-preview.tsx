import { type Column, Table } from '@/app/_ui/table';
import type { PullFileLine, PullFileView } from './pull-file-view';

type Told = Extract<PullFileView, { state: 'preview' | 'done' }>;

/** Rows shown of a long file. Chosen. */
const SHOWN = 200;

/** Every row of a file and what becomes of it. */
export function PullFilePreview({ view }: { readonly view: Told }) {
  const { state, fresh, added, known, empty, refused, repeated, headings } = view;
  const facts = [
    `${fresh.length} new`,
    added > 0 ? `${added} specimens that the series does not have yet` : '',
    known > 0 ? `${known} written down already` : '',
    empty > 0 ? `${empty} without a reading` : '',
    repeated > 0 ? `${repeated} that repeat an earlier row` : '',
    refused.length > 0 ? `${refused.length} that cannot be taken in` : '',
  ].filter((fact) => fact !== '');
  return (
    <div className="grid gap-5">
      <p className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
        {state === 'done' ? '✓ Taken in: ' : 'In the file: '}
        {facts.join(', ')}.
      </p>
      <p className="text-sm text-ink-soft">Columns: {headings.join(', ')}</p>
      {refused.length > 0 && (
        <section className="grid gap-2">
          <h2 className="text-lg font-bold">Cannot be taken in</h2>
          <Table
            caption="Rows that cannot be taken in"
            columns={COLUMNS}
            rows={refused.slice(0, SHOWN)}
            rowKey={keyOf}
          />
        </section>
      )}
      {fresh.length > 0 && (
        <section className="grid gap-2">
          <h2 className="text-lg font-bold">{state === 'done' ? 'Taken in' : 'New'}</h2>
          <Table caption="New pulls" columns={COLUMNS} rows={fresh.slice(0, SHOWN)} rowKey={keyOf} />
          {fresh.length > SHOWN && (
            <p className="text-sm text-ink-soft">
              The first {SHOWN} of {fresh.length}.
            </p>
          )}
        </section>
      )}
    </div>
  );
}

function keyOf({ line, words }: PullFileLine): string {
  return `${line} ${words}`;
}

const COLUMNS: readonly Column<PullFileLine>[] = [
  { id: 'line', title: 'Line', cell: ({ line }) => line },
  { id: 'text', title: 'Row', cell: ({ text }) => text },
  { id: 'words', title: 'Says', isLong: true, cell: ({ words }) => words },
];
