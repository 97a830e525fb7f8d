import { fieldsOf, type Separator } from './cells';
import { headingUnitText, type PullColumn, pullColumn } from './pull-columns';

/** How a file of pull readings is laid out. */
export interface PullLayout {
  readonly separator: Separator;
  /** Line of the headings, from 1. */
  readonly headingLine: number;
  readonly headings: readonly string[];
  /** Column of each thing it holds, counted from 0. */
  readonly columns: ReadonlyMap<PullColumn, number>;
  /** Units that the headings name, as they are written; null where they name none. */
  readonly loadUnit: string | null;
  readonly depthUnit: string | null;
}

const SEPARATORS: readonly Separator[] = [',', ';', '\t', '|'];
/** Headings are looked for in so many lines. Chosen. */
const HEAD_LINES = 40;

/** The first line that names a load and what was pulled, under the separator that tells most; null where there is none. */
export function findPullLayout(lines: readonly string[]): PullLayout | null {
  for (const [index, line] of lines.slice(0, HEAD_LINES).entries()) {
    const best = SEPARATORS.map((separator) => layoutOf(line, index + 1, separator)).reduce((a, b) =>
      b.columns.size > a.columns.size ? b : a,
    );
    const has = (column: PullColumn) => best.columns.has(column);
    if (has('load') && (has('specimen') || (has('mix') && has('depth')))) return best;
  }
  return null;
}

function layoutOf(line: string, headingLine: number, separator: Separator): PullLayout {
  const headings = fieldsOf(line, separator);
  const columns = new Map<PullColumn, number>();
  for (const [index, heading] of headings.entries()) {
    const column = pullColumn(heading);
    if (column !== null && !columns.has(column)) columns.set(column, index);
  }
  const unitOf = (column: PullColumn) => headingUnitText(headings[columns.get(column) ?? -1] ?? '');
  return { separator, headingLine, headings, columns, loadUnit: unitOf('load'), depthUnit: unitOf('depth') };
}
