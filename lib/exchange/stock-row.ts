import { fromMilli, type StockUnit, toMilli } from '@/lib/stock/ledger';
import { readMoney } from '@/lib/units/money';
import { readNumber } from '@/lib/units/read-number';
import { readQuantity } from '@/lib/units/read-quantity';
import { readStamp } from './stamp';
import { StampParts } from './stamp-parts';
import type { StockColumn } from './stock-columns';
import { type DayOrder, wallTime } from './wall-time';

/** What a thing of a list seems to be. */
export type ListedKind = 'wood' | 'wire' | 'adhesive' | 'coating' | 'hook' | 'split-ring' | 'screw-eye' | 'ballast';

/** One lot of a list. Days are YYYY-MM-DD; null: the list does not say. */
export interface StockRow {
  readonly line: number;
  readonly materialName: string;
  readonly kind: ListedKind | null;
  readonly code: string;
  readonly part: 'whole' | 'resin' | 'hardener';
  readonly quantity: number;
  readonly unit: StockUnit;
  readonly priceMinor: number | null;
  readonly receivedOn: string | null;
  readonly openedOn: string | null;
  readonly expiresOn: string | null;
  readonly note: string;
}

/** Why a line is not taken, as words for the maker. */
export const STOCK_REFUSALS = {
  'open-quote': 'a quote is opened and not closed',
  'no-material': 'it names no material',
  'too-long': 'a name, code or note is too long',
  'no-quantity': 'its quantity cannot be read',
  'nothing-left': 'its quantity is 0',
  'no-unit': 'its quantity has no unit: write g, mm, m, in, oz or pieces',
  'part-pieces': 'pieces must be a whole number',
  'bad-price': 'its price cannot be read',
  'bad-day': 'a day in it cannot be read',
} as const;
export type StockRefusal = keyof typeof STOCK_REFUSALS;

export interface StockRowRules {
  /** Unit of a bare quantity that the file names, as spelled; null: none. */
  readonly unit: string | null;
  readonly currency: string;
  readonly dayOrder: DayOrder;
}

/** What a lot is called in a list that gives it no code. */
export const LISTED_CODE = 'As listed';

export type StockRowRead =
  | { readonly ok: true; readonly row: StockRow }
  | { readonly ok: false; readonly reason: StockRefusal };

/** Reads one line of a list, taken apart; `cell` gives the text of a column, empty where there is none. */
export function readStockRow(cell: (column: StockColumn) => string, line: number, rules: StockRowRules): StockRowRead {
  const refused = (reason: StockRefusal): StockRowRead => ({ ok: false, reason });
  const [materialName, note] = [cell('material'), cell('note')];
  const code = cell('lot') === '' ? LISTED_CODE : cell('lot');
  if (materialName === '') return refused('no-material');
  if (materialName.length > 100 || code.length > 60 || note.length > 500) return refused('too-long');
  const kind = kindOf(cell('kind'), materialName);
  const quantity = readStock(cell('quantity'), cell('unit') === '' ? rules.unit : cell('unit'), kind);
  if (!quantity.ok) return refused(quantity.reason);
  const price = cell('price') === '' ? null : readMoney(cell('price'), rules.currency);
  if (price !== null && !price.ok) return refused('bad-price');
  const days = [cell('received'), cell('opened'), cell('expires')].map((text) => dayOf(text, rules.dayOrder));
  const [receivedOn, openedOn, expiresOn] = days;
  if (receivedOn === undefined || openedOn === undefined || expiresOn === undefined) return refused('bad-day');
  const part = partOf(cell('part'), materialName);
  const isPartInName = part !== 'whole' && cell('part') === '';
  return {
    ok: true,
    row: {
      line,
      // Resin and hardener are two lots of one material.
      materialName: isPartInName ? materialName.replace(PART_IN_NAME, '').trim() : materialName,
      kind,
      code,
      part,
      quantity: quantity.value,
      unit: quantity.unit,
      priceMinor: price?.minor ?? null,
      receivedOn,
      openedOn,
      expiresOn,
      note,
    },
  };
}

const PIECES = /^(pieces?|pcs?\.?|ea\.?|each|st(k|ueck|ück)?\.?|count|no\.?)$/i;

type ReadStock =
  | { readonly ok: true; readonly value: number; readonly unit: StockUnit }
  | { readonly ok: false; readonly reason: StockRefusal };

/** `500 g`, `22 m`, `100 pcs`, or a bare number in the unit of the file. What has no unit is never guessed. */
function readStock(text: string, fileUnit: string | null, kind: ListedKind | null): ReadStock {
  const [, bare = '', own = ''] = /^([\d\s.,/+\u00bc-\u00be\u215b-\u215e-]*)(.*)$/.exec(text.trim()) ?? [];
  const number = readNumber(bare);
  if (!number.ok) return { ok: false, reason: 'no-quantity' };
  if (number.value === 0) return { ok: false, reason: 'nothing-left' };
  const unit = own.trim() !== '' ? own.trim() : (fileUnit ?? '').trim();
  if (unit === '' ? isCounted(kind) : PIECES.test(unit)) {
    if (!Number.isInteger(number.value) || number.value < 0) return { ok: false, reason: 'part-pieces' };
    return { ok: true, value: number.value, unit: 'pieces' };
  }
  if (unit === '') return { ok: false, reason: 'no-unit' };
  for (const [quantity, inside, base] of [
    ['mass', 'g', 'g'],
    ['length', 'mm', 'mm'],
  ] as const) {
    const read = readQuantity(quantity, `${bare.trim()} ${unit}`, base);
    if (!read.ok) continue;
    const milli = toMilli(read.value);
    return milli === 0 ? { ok: false, reason: 'nothing-left' } : { ok: true, value: fromMilli(milli), unit: inside };
  }
  return { ok: false, reason: 'no-unit' };
}

/** Kinds that nobody weighs or measures. */
function isCounted(kind: ListedKind | null): boolean {
  return kind === 'hook' || kind === 'split-ring' || kind === 'screw-eye';
}

/** Words by which a list tells what a thing is; chosen. */
const KIND_NAMES: readonly (readonly [ListedKind, RegExp])[] = [
  ['split-ring', /split ?ring|sprengring/i],
  ['screw-eye', /screw ?eye|schraubose/i],
  ['hook', /\bhooks?\b|treble|haken/i],
  ['coating', /coat|varnish|lacquer|sealer|lack\b/i],
  ['adhesive', /epoxy|glue|adhesive|resin|hardener|cyanoacrylate|kleber/i],
  ['wire', /wire|draht/i],
  ['ballast', /ballast|lead|tungsten|weight|blei/i],
  ['wood', /wood|timber|cedar|maple|pine|balsa|birch|holz/i],
];

function kindOf(text: string, name: string): ListedKind | null {
  const from = (words: string) => KIND_NAMES.find(([kind, pattern]) => words === kind || pattern.test(words))?.[0];
  return from(text.trim().toLowerCase()) ?? from(name) ?? null;
}

const PART_IN_NAME = /\s*[-,(]\s*(resin|hardener|part [ab])\)?$/i;

function partOf(text: string, name: string): StockRow['part'] {
  const words = text === '' ? (PART_IN_NAME.exec(name)?.[1] ?? '') : text;
  if (/resin|^a$|part a|harz/i.test(words)) return 'resin';
  return /hardener|^b$|part b|harter|härter/i.test(words) ? 'hardener' : 'whole';
}

/** Null for an empty cell, undefined for what is no day. */
function dayOf(text: string, dayOrder: DayOrder): string | null | undefined {
  if (text === '' || text === '-') return null;
  const parts = new StampParts();
  if (!readStamp(text, 0, text.length, parts)) return undefined;
  const wallMs = wallTime(parts, dayOrder);
  return Number.isNaN(wallMs) ? undefined : new Date(wallMs).toISOString().slice(0, 10);
}
