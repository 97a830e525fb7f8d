import { type CellKind, columnKind } from './cell-kind';
import { parseDecimal } from './decimal';
import type { RowsFound } from './find-rows';
import { type HeadingRole, headingRole } from './heading-words';

/** One column of the first rows of a file. */
export interface ColumnSample {
  readonly index: number;
  readonly heading: string;
  readonly role: HeadingRole | null;
  readonly kind: CellKind;
  readonly cells: readonly string[];
  /** The numbers among its fields, in order. */
  readonly numbers: readonly number[];
}

/** The columns of the rows found. */
export function columnSamples(found: RowsFound): ColumnSample[] {
  const width = found.rows[0]?.fields.length ?? 0;
  return Array.from({ length: width }, (_, index) => {
    const cells = found.rows.map((row) => row.fields[index] ?? '');
    const heading = found.headings[index] ?? '';
    return {
      index,
      heading,
      role: headingRole(heading),
      kind: columnKind(found.rows.map((row) => row.kinds[index] ?? 'missing')),
      cells,
      numbers: cells.map((cell) => parseDecimal(cell, 0, cell.length)).filter(Number.isFinite),
    };
  });
}

/** Whether a column counts its rows: whole numbers that each grow by one. */
export function isRowCount(column: ColumnSample): boolean {
  if (column.role === 'index') return true;
  const { numbers } = column;
  return numbers.length >= 3 && numbers.every((value, place) => place === 0 || value === (numbers[place - 1] ?? 0) + 1);
}
