import { z } from 'zod';

/** A character that no database of ours can keep: SQLite cuts a text there, Postgres refuses it. */
const NUL = String.fromCharCode(0);

/**
 * Text a person typed: spaces round it removed, at most `maxLength` characters, no NUL character.
 * `minLength` 0 allows empty.
 */
export function plainText(minLength: number, maxLength: number) {
  return z
    .string()
    .trim()
    .min(minLength, minLength === 1 ? 'Write something here.' : `Write at least ${minLength} characters.`)
    .max(maxLength, `Keep it to ${maxLength} characters.`)
    .refine((text) => !text.includes(NUL), 'This text holds a character (code 0) that cannot be stored.');
}

/** An identifier as it crosses the edge: made by the database or by a client, 1 to 64 url-safe characters. */
export const idSchema = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'not an identifier');

/** An identifier that a client makes for something new: long enough that two phones do not make the same. */
export const clientKeySchema = z
  .string()
  .regex(/^[A-Za-z0-9_-]{8,64}$/, 'a key is 8 to 64 letters, digits, hyphens or underscores');
