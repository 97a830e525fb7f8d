import type { ReactNode } from 'react';

export interface Column<Row> {
  readonly id: string;
  readonly title: string;
  readonly cell: (row: Row) => ReactNode;
  /** Numbers are set to the right. */
  readonly isNumber?: boolean;
  /** Whole sentences: on a phone they stand under their title, from the left. */
  readonly isLong?: boolean;
}

export interface TableProps<Row> {
  /** Read out before the table; not shown when a heading above already says it. */
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
}

/** A table; on a phone each row becomes a card with its titles in front. The first column names the row. */
export function Table<Row>({ caption, columns, rows, rowKey }: TableProps<Row>) {
  return (
    <table className="w-full border-collapse max-sm:block">
      <caption className="sr-only">{caption}</caption>
      <thead className="max-sm:sr-only">
        <tr className="border-b-2 border-line-strong">
          {columns.map((column) => (
            <th
              key={column.id}
              scope="col"
              className={`px-3 py-2 align-bottom text-sm font-semibold text-ink-soft first:pl-0 last:pr-0 ${column.isNumber === true ? 'text-right' : 'text-left'}`}
            >
              {column.title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody className="max-sm:grid max-sm:gap-3">
        {rows.map((row) => (
          <tr
            key={rowKey(row)}
            className="border-b border-line max-sm:grid max-sm:gap-1 max-sm:rounded-sheet max-sm:border max-sm:bg-sheet max-sm:p-4"
          >
            {columns.map((column, index) => (
              <Cell key={column.id} column={column} row={row} isName={index === 0} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Cell<Row>({
  column,
  row,
  isName,
}: {
  readonly column: Column<Row>;
  readonly row: Row;
  readonly isName: boolean;
}) {
  const place = `px-3 py-3 align-baseline first:pl-0 last:pr-0 max-sm:p-0 ${column.isNumber === true ? 'sm:text-right' : 'text-left'}`;
  if (isName) {
    return (
      <th scope="row" className={`${place} font-semibold max-sm:text-lg`}>
        {column.cell(row)}
      </th>
    );
  }
  return (
    <td
      className={`${place} ${column.isLong === true ? 'max-sm:grid' : 'max-sm:flex max-sm:items-baseline max-sm:justify-between max-sm:gap-4'}`}
    >
      <span aria-hidden="true" className="max-w-[60%] shrink-0 text-sm text-ink-soft sm:hidden">
        {column.title}
      </span>
      <span className={column.isLong === true ? '' : 'min-w-0 max-sm:text-right'}>{column.cell(row)}</span>
    </td>
  );
}
