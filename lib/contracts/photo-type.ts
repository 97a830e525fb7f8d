/** Kinds of photo that are kept: what every browser shows. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** Greatest photo that is taken, bytes. Chosen: what a phone makes at its best, below the 10 MB that a request may have. */
export const MOST_PHOTO_BYTES = 9_000_000;

const SIGNATURES: {
  readonly [T in PhotoType]: (byte: (at: number) => number, text: (at: number) => string) => boolean;
} = {
  'image/jpeg': (byte) => byte(0) === 0xff && byte(1) === 0xd8 && byte(2) === 0xff,
  'image/png': (byte, text) => byte(0) === 0x89 && text(1).startsWith('PNG') && byte(4) === 0x0d && byte(5) === 0x0a,
  'image/webp': (_, text) => text(0).startsWith('RIFF') && text(8).startsWith('WEBP'),
};

/**
 * What kind of photo these bytes are, by their beginning and never by what they are called; null for anything else.
 * Source: the signatures of ISO/IEC 10918-1 (SOI marker), RFC 2083 section 12.11, and RFC 9649.
 */
export function photoTypeOf(bytes: Uint8Array): PhotoType | null {
  if (bytes.length < 12) return null;
  const byte = (at: number) => bytes[at] ?? -1;
  const text = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  return PHOTO_TYPES.find((type) => SIGNATURES[type](byte, text)) ?? null;
}
