import type { ReactNode } from 'react';
import type { BenchEntry } from '@/app/_server/bench';
import { type GridCell, type GridRow, pieceRows } from './piece-rows';

const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2 } as const;

const MARKS: { readonly [K in GridCell['kind']]: { readonly word: string; readonly shape: ReactNode } } = {
  done: { word: 'done', shape: <path d="M1.5 8.5 6 13 14.5 3" {...line} strokeWidth={3} /> },
  part: {
    word: 'partly done',
    shape: (
      <>
        <circle cx="8" cy="8" r="6.5" {...line} />
        <path d="M8 1.5a6.5 6.5 0 0 0 0 13Z" fill="currentColor" />
      </>
    ),
  },
  ready: { word: 'can be done now', shape: <circle cx="8" cy="8" r="7" fill="currentColor" /> },
  waits: { word: 'waits for a cure', shape: <circle cx="8" cy="8" r="6.5" {...line} /> },
  'window-closed': { word: 'recoat window closed', shape: <path d="M1 2h14L8 15Z" {...line} /> },
  'not-judged': {
    word: 'not judged',
    shape: <path d="M4.5 5.5a3.5 3.5 0 1 1 5 3.2C8.3 9.3 8 9.8 8 11M8 13.2v1.3" {...line} />,
  },
  blocked: { word: 'earlier work first', shape: <path d="M5 8h6" {...line} /> },
  none: { word: 'nothing', shape: null },
};

const LATE = <path d="M8 .8 15.2 8 8 15.2.8 8Z" {...line} />;

/** Pieces against operations: pieces that stand alike share a row, each state has its own shape and word. */
export function PieceGrid({ entry }: { readonly entry: BenchEntry }) {
  const rows = pieceRows(entry);
  const { operations } = entry.batch.plan;
  const kinds = [...new Set(rows.flatMap((row) => row.cells.map((cell) => cell.kind)))].filter(
    (kind) => kind !== 'none',
  );
  const hasLate = rows.some((row) => row.cells.some((cell) => cell.isLate));
  return (
    <div className="grid gap-3">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys */}
      <section className="relative overflow-x-auto" aria-label="Pieces and operations" tabIndex={0}>
        <table className="border-collapse">
          <caption className="sr-only">Where the pieces stand on each operation of the route</caption>
          <thead>
            <tr>
              <th scope="col" className="sticky left-0 bg-ground pr-2 pb-2 text-left align-bottom text-sm">
                Pieces
              </th>
              {operations.map((operation) => (
                <th key={operation.id} scope="col" className="px-0.5 pb-2 align-bottom">
                  <span className="inline-block max-h-40 rotate-180 overflow-hidden text-left text-sm font-semibold text-ellipsis whitespace-nowrap [writing-mode:vertical-rl]">
                    {operation.name}
                  </span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.from} row={row} operations={operations.map(({ id }) => id)} />
            ))}
          </tbody>
        </table>
      </section>
      <ul aria-label="What the marks mean" className="flex flex-wrap gap-x-5 gap-y-1 text-sm text-ink-soft">
        {kinds.map((kind) => (
          <li key={kind} className="flex items-center gap-2">
            <Mark shape={MARKS[kind].shape} /> {MARKS[kind].word}
          </li>
        ))}
        {rows.some((row) => row.cells.some((cell) => cell.mixNumbers.length > 0)) && (
          <li>figures under a mark: the mixes used</li>
        )}
        {hasLate && (
          <li className="flex items-center gap-2 font-semibold text-accent">
            <Mark shape={LATE} /> set after the pot life
          </li>
        )}
      </ul>
    </div>
  );
}

function Row({ row, operations }: { readonly row: GridRow; readonly operations: readonly string[] }) {
  const { from, to, scrapReason } = row;
  return (
    <tr className="border-t border-line">
      <th scope="row" className="sticky left-0 h-11 bg-ground pr-2 text-left font-semibold whitespace-nowrap">
        {scrapReason === null ? numbers(from, to) : <s>{numbers(from, to)}</s>}
      </th>
      {scrapReason === null ? (
        row.cells.map((cell, index) => <Cell key={operations[index]} cell={cell} />)
      ) : (
        <td colSpan={operations.length} className="px-2 text-sm">
          scrapped: {scrapReason}
        </td>
      )}
    </tr>
  );
}

function Cell({ cell }: { readonly cell: GridCell }) {
  const { word, shape } = MARKS[cell.kind];
  const mixes = cell.mixNumbers.length === 0 ? '' : `, mix ${cell.mixNumbers.join(' and ')}`;
  return (
    <td className="min-w-9 px-0.5 text-center">
      <span className={`inline-flex flex-col items-center ${cell.isLate ? 'text-accent' : ''}`}>
        <span className="inline-flex gap-0.5">
          <Mark shape={shape} />
          {cell.isLate && <Mark shape={LATE} />}
        </span>
        {cell.mixNumbers.length > 0 && (
          <span aria-hidden="true" className="text-xs text-ink-soft">
            {cell.mixNumbers.join('+')}
          </span>
        )}
        <span className="sr-only">
          {word}
          {mixes}
          {cell.isLate ? ', late' : ''}
        </span>
      </span>
    </td>
  );
}

function Mark({ shape }: { readonly shape: ReactNode }) {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true" className="size-4 shrink-0">
      {shape}
    </svg>
  );
}

function numbers(from: number, to: number): string {
  return from === to ? String(from) : `${from}–${to}`;
}
