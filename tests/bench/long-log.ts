import { closeSync, openSync, writeSync } from 'node:fs';

/** Writes a log of one-minute readings as a logger would: headings, stamps in UTC with Z, two decimals, CRLF. */
export function writeLongLog(file: string, rows: number): void {
  const handle = openSync(file, 'w');
  const startAt = Date.UTC(2025, 0, 1);
  let text = '"Timestamp","Temp (°C)"\r\n';
  for (let row = 0; row < rows; row += 1) {
    const stamp = new Date(startAt + row * 60_000).toISOString().slice(0, 19);
    text += `${stamp}Z,${(17 + 6 * Math.sin(row / 9_000) + 3 * Math.sin(row / 230)).toFixed(2)}\r\n`;
    if (text.length > 1_000_000) {
      writeSync(handle, text);
      text = '';
    }
  }
  writeSync(handle, text);
  closeSync(handle);
}
