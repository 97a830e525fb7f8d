/** Lines of an iCalendar stream. Source of everything here: RFC 5545 sections 3.1 and 3.3.11 (seen). */

/** Longest line in octets, without its end. RFC 5545 section 3.1. */
const LONGEST_LINE = 75;

const encoder = new TextEncoder();

/**
 * A text as a value of type TEXT: backslash, semicolon, comma and line ends are escaped, a colon is not. Carriage
 * returns become plain line ends, and control characters, which the type forbids, are left out but for the tab.
 */
export function escapedText(text: string): string {
  return (
    text
      .replace(/\r\n?/g, '\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
      .replace(/[\\;,]/g, (character) => `\\${character}`)
      .replace(/\n/g, '\\n')
  );
}

/**
 * One content line, folded into lines of at most 75 octets of UTF-8 that are joined by CRLF and a space; no character
 * is cut. Example: `SUMMARY:` and 68 times `x` gives a line of 75 octets and one of a space and an `x`.
 */
export function foldedLine(line: string): string {
  if (encoder.encode(line).length <= LONGEST_LINE) return line;
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    // The space in front of a continued line counts as well.
    const room = parts.length === 0 ? LONGEST_LINE : LONGEST_LINE - 1;
    if (octets + size > room) {
      parts.push(part);
      part = '';
      octets = 0;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n ');
}
