/**
 * Rows as CSV (RFC 4180): commas, CRLF, quotes where a cell needs them. A cell that a spreadsheet would take for a
 * formula gets an apostrophe in front. Starts with the mark that tells spreadsheets it is UTF-8.
 */
export function csvText(rows: readonly (readonly (string | number)[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(cellText).join(',')).join('\r\n')}\r\n`;
}

function cellText(cell: string | number): string {
  if (typeof cell === 'number') return String(cell);
  const plain = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
