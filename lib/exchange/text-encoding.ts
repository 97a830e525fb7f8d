/** How the bytes of a logger file stand for text. */
export type TextEncodingName = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Turns the bytes of one file into text, chunk by chunk. */
export interface ChunkDecoder {
  readonly encoding: TextEncodingName;
  /** Text of the next bytes; a character cut by the end of the chunk comes with the next one. */
  decode(bytes: Uint8Array): string;
  /** What was left over at the end of the file. */
  end(): string;
}

/**
 * Encoding of a file, told from its first bytes: a byte order mark decides; without one it is UTF-8 when the bytes are
 * valid UTF-8, and Windows-1252 when they are not (there the degree sign is the single byte B0).
 *
 * `head` is the beginning of the file; a character cut off at its end does not count against UTF-8.
 * Source: the byte order marks of the Unicode Standard, section 23.8; the fallback is common practice, no source.
 */
export function textEncodingOf(head: Uint8Array): TextEncodingName {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/**
 * Decoder of a file in `encoding`. The byte order mark is left out, and so are NUL characters, which some loggers pad
 * with and no database keeps. Bytes that are wrong in UTF-8 become U+FFFD, which no number or time contains.
 */
export function chunkDecoder(encoding: TextEncodingName): ChunkDecoder {
  const decoder = new TextDecoder(encoding);
  return {
    encoding,
    decode: (bytes) => withoutNul(decoder.decode(bytes, { stream: true })),
    end: () => withoutNul(decoder.decode()),
  };
}

function withoutNul(text: string): string {
  return text.includes('\u0000') ? text.replaceAll('\u0000', '') : text;
}
