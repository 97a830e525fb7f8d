import { cellKind } from './cell-kind';
import type { RowsFound } from './find-rows';
import { headingRole } from './heading-words';
import type { DecimalCut } from './reading-layout';

/**
 * Whether decimal commas stand unquoted in a comma-separated file, so that 21,5 came apart: `sure` when the headings
 * are one fewer than the fields, `open` when two columns of whole numbers could also be two quantities (the maker must
 * say), `none` otherwise.
 */
export type DecimalCutFound =
  | { readonly kind: 'none' }
  | { readonly kind: 'sure' | 'open'; readonly cut: DecimalCut; readonly example: string };

export function findDecimalCut(found: RowsFound): DecimalCutFound {
  const width = found.rows[0]?.fields.length ?? 0;
  if (found.separator !== ',' || width < 3) return { kind: 'none' };
  if (found.headings.length === width - 1) {
    const named = found.headings.findIndex((heading) => headingRole(heading) === 'temperature');
    const at = named === -1 ? found.headings.length - 1 : named;
    return isCut(found, at) ? { kind: 'sure', cut: { at, width }, example: exampleAt(found, at) } : { kind: 'none' };
  }
  const at = width - 2;
  const isOnlyPair =
    found.headings.length === 0 && isCut(found, at) && !found.rows.every((row) => row.kinds[at - 1] === 'number');
  return isOnlyPair ? { kind: 'open', cut: { at, width }, example: exampleAt(found, at) } : { kind: 'none' };
}

/** The rows as they are once the two halves of each number are put together. */
export function withoutCut(found: RowsFound, cut: DecimalCut): RowsFound {
  const rows = found.rows.map((row) => {
    const whole = `${row.fields[cut.at] ?? ''}.${row.fields[cut.at + 1] ?? ''}`;
    const fields = [...row.fields.slice(0, cut.at), whole, ...row.fields.slice(cut.at + 2)];
    return { ...row, fields, kinds: fields.map(cellKind) };
  });
  return { ...found, rows };
}

function isCut(found: RowsFound, at: number): boolean {
  return found.rows.every((row) => {
    const whole = row.fields[at] ?? '';
    const decimals = row.fields[at + 1] ?? '';
    return row.kinds[at] === 'missing' || (/^[+\-\u2212]?\d{1,3}$/.test(whole) && /^\d{1,4}$/.test(decimals));
  });
}

function exampleAt(found: RowsFound, at: number): string {
  const row = found.rows.find((candidate) => candidate.kinds[at] === 'number') ?? found.rows[0];
  return `${row?.fields[at] ?? ''},${row?.fields[at + 1] ?? ''}`;
}
