import { fieldsOf, type Separator } from './cells';
import { plainHeading } from './heading-words';
import { headingUnitText } from './pull-columns';

/** What a column of a list of stock holds. */
export const STOCK_COLUMNS = [
  'material',
  'kind',
  'lot',
  'part',
  'quantity',
  'unit',
  'price',
  'received',
  'opened',
  'expires',
  'note',
] as const;
export type StockColumn = (typeof STOCK_COLUMNS)[number];

/** Words of headings, English and German; chosen. The first that fits a heading counts. */
const WORDS: readonly (readonly [StockColumn, RegExp])[] = [
  ['expires', /expir|best before|use by|good until|shelf|ablauf|haltbar|verfall/],
  ['opened', /opened|geoffnet|anbruch/],
  ['received', /received|bought on|purchase date|delivered|eingang|gekauft am|^(date|datum)$/],
  ['price', /price|cost|paid|value|preis|kosten|wert/],
  ['quantity', /quantity|qty|amount|on hand|in stock|count|left|menge|anzahl|bestand/],
  ['unit', /^(unit|uom|units|einheit|measure)$/],
  ['lot', /\blot\b|batch|charge|serial|los\b/],
  ['part', /^(part|component|komponente|teil)$/],
  ['kind', /^(kind|type|category|art|gruppe)$/],
  ['material', /material|item|name|product|article|description|artikel|bezeichnung/],
  ['note', /note|remark|comment|supplier|vendor|source|bemerk|notiz|lieferant/],
];

/** How a list of stock is laid out. */
export interface StockLayout {
  readonly separator: Separator;
  /** Line of the headings, from 1. */
  readonly headingLine: number;
  /** Column of each thing it holds, counted from 0. */
  readonly columns: ReadonlyMap<StockColumn, number>;
  /** Unit that the heading of the quantity names, as it is written; null where it names none. */
  readonly unit: string | null;
}

const SEPARATORS: readonly Separator[] = [',', ';', '\t', '|'];
/** Headings are looked for in so many lines. Chosen. */
const HEAD_LINES = 40;

/** The first line that names a material and a quantity, under the separator that tells most; null where there is none. */
export function findStockLayout(lines: readonly string[]): StockLayout | null {
  for (const [index, line] of lines.slice(0, HEAD_LINES).entries()) {
    const best = SEPARATORS.map((separator) => layoutOf(line, index + 1, separator)).reduce((a, b) =>
      b.columns.size > a.columns.size ? b : a,
    );
    if (best.columns.has('material') && best.columns.has('quantity')) return best;
  }
  return null;
}

function layoutOf(line: string, headingLine: number, separator: Separator): StockLayout {
  const headings = fieldsOf(line, separator);
  const columns = new Map<StockColumn, number>();
  for (const [index, heading] of headings.entries()) {
    const column = columnOf(heading);
    if (column !== null && !columns.has(column)) columns.set(column, index);
  }
  return {
    separator,
    headingLine,
    columns,
    unit: headingUnitText(headings[columns.get('quantity') ?? -1] ?? ''),
  };
}

function columnOf(heading: string): StockColumn | null {
  const bare = plainHeading(heading)
    .replace(/[[(].*?[\])]/g, '')
    .trim();
  return WORDS.find(([, words]) => words.test(bare))?.[0] ?? null;
}
