/** Longest line that is kept whole, in characters. Chosen: a row of a logger has a few hundred at most. */
export const LONGEST_LINE = 32_768;

/**
 * Cuts text that arrives in pieces into lines ended by CRLF, LF or CR. It holds one unfinished line at most, and of
 * that no more than LONGEST_LINE characters: the rest of a longer line is left out, so that a file without line ends
 * does not fill the memory.
 */
export class LineSplitter {
  #rest = '';

  /** The lines that `text` completes, without their ends. */
  push(text: string): string[] {
    const whole = this.#rest + text;
    const lines: string[] = [];
    let from = 0;
    for (let end = whole.indexOf('\n'); end !== -1; end = whole.indexOf('\n', from)) {
      addLines(lines, whole, from, whole.charCodeAt(end - 1) === CR && end > from ? end - 1 : end);
      from = end + 1;
    }
    // Files that end lines by CR alone: the last CR may be the first half of a CRLF, so it waits.
    const lastCr = whole.lastIndexOf('\r', whole.length - 2);
    if (lastCr >= from) {
      addLines(lines, whole, from, lastCr);
      from = lastCr + 1;
    }
    this.#rest = whole.length - from > 2 * LONGEST_LINE ? whole.slice(from, from + LONGEST_LINE) : whole.slice(from);
    return lines;
  }

  /** The last line, when the file does not end with a line end. */
  end(): string[] {
    const lines: string[] = [];
    if (this.#rest !== '') addLines(lines, this.#rest, 0, this.#rest.length - (this.#rest.endsWith('\r') ? 1 : 0));
    this.#rest = '';
    return lines;
  }
}

const CR = 13;

/** Adds text[from, to) as one line, or as several where it holds a CR. */
function addLines(lines: string[], text: string, from: number, to: number): void {
  const line = text.slice(from, to);
  if (!line.includes('\r')) {
    lines.push(line);
    return;
  }
  for (const part of line.split('\r')) lines.push(part);
}
