/** A station as text, before the server reads it. */
export interface PastedStation {
  readonly x: string;
  readonly height: string;
  readonly width: string;
}

export type PastedStations =
  | { readonly ok: true; readonly stations: readonly PastedStation[] }
  | { readonly ok: false; readonly line: number; readonly text: string };

/**
 * Splits lines of a sheet into stations, each of three values between tabs, semicolons or commas; the values are left
 * as they were written. A first line without any digit is taken for a heading. Empty lines are passed over.
 */
export function readPastedStations(text: string): PastedStations {
  const separator = text.includes('\t') ? '\t' : text.includes(';') ? ';' : ',';
  const stations: PastedStation[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    const isHeading = stations.length === 0 && !/\d/.test(line);
    if (line.trim() === '' || isHeading) continue;
    const [x, height, width, ...more] = line.split(separator).map((cell) => cell.trim());
    const isWhole = x !== undefined && height !== undefined && width !== undefined && more.every((cell) => cell === '');
    if (!isWhole) return { ok: false, line: index + 1, text: line.trim().slice(0, 60) };
    stations.push({ x, height, width });
  }
  return { ok: true, stations };
}
