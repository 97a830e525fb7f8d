import type { PullRow } from '@/lib/exchange/pull-row';
import { modeText } from '@/lib/pulltest/pull-mode';
import { forceIn, lengthIn } from '@/lib/units/convert';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { ForceUnit, LengthUnit } from '@/lib/units/unit-choice';

/**
 * Pull readings as a file that `readPullFile` reads back to the same readings, to a millionth of the unit, and any
 * spreadsheet opens: UTF-8, commas, CRLF, quotes where needed (RFC 4180), times in UTC. Text that a spreadsheet would
 * take for a formula gets an apostrophe in front.
 */
export function pullCsv(rows: readonly PullRow[], lengthUnit: LengthUnit, forceUnit: ForceUnit): string {
  const length = lengthUnit === 'inch' ? 'in' : 'mm';
  const head = [
    'Specimen',
    'Mix',
    'Condition',
    `Depth (${length})`,
    `Load (${forceUnit})`,
    'At least',
    'Failure mode',
    'Angle (deg)',
    'Pulled at',
    'Note',
  ];
  const lines = rows.map((row) => [
    safe(row.specimen ?? ''),
    safe(row.mix ?? ''),
    safe(row.condition ?? ''),
    row.embedmentMm === null ? '' : plainDecimals(lengthIn(lengthUnit, row.embedmentMm)),
    row.loadN === null ? '' : plainDecimals(forceIn(forceUnit, row.loadN)),
    row.isLowerBound ? 'yes' : '',
    row.mode === null ? '' : modeText(row.mode),
    row.angleDeg === null ? '' : plainDecimals(row.angleDeg),
    row.pulledAt === null ? '' : new Date(row.pulledAt).toISOString(),
    safe(row.note),
  ]);
  return [head, ...lines].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function safe(text: string): string {
  const oneLine = text.replace(/[\r\n]+/g, ' ').trim();
  return /^'*[=+\-@]/.test(oneLine) ? `'${oneLine}` : oneLine;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
