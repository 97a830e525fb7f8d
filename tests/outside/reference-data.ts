import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'vitest';

/** Folder of data that stay beside the repository because they are large or not ours to spread. */
const FOLDER = path.join(process.cwd(), '..', 'shared', 'reference', 'statistics-data');

/** A data file as it stands there; null where the folder is absent. */
export function referenceData(name: string): unknown {
  const file = path.join(FOLDER, name);
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
}

/** Registers one skipped test that says so where the data are absent. */
export function reportAbsent(data: unknown, name: string): void {
  if (data === null) test.skip(`skipped: data not here (${name})`, () => {});
}

/** Significant digits on which a figure agrees with a certified one; 15.9 where all do. */
export function digits(got: number, certified: number): number {
  if (got === certified) return 15.9;
  const error = certified === 0 ? Math.abs(got) : Math.abs(got / certified - 1);
  return Math.min(15.9, -Math.log10(error));
}

/** A value inside parsed data by its path. */
export function at(data: unknown, ...keys: readonly (string | number)[]): unknown {
  return keys.reduce<unknown>((value, key) => {
    if (typeof value !== 'object' || value === null) return undefined;
    return Reflect.get(value, key);
  }, data);
}

/** A number inside parsed data, also where it is written as text to keep its digits. */
export function numberAt(data: unknown, ...keys: readonly (string | number)[]): number {
  const value = at(data, ...keys);
  const number = typeof value === 'string' ? Number(value) : value;
  if (typeof number !== 'number' || Number.isNaN(number)) throw new Error(`no number at ${keys.join('.')}`);
  return number;
}

/** Numbers inside parsed data. */
export function numbersAt(data: unknown, ...keys: readonly (string | number)[]): number[] {
  const value = at(data, ...keys);
  if (!Array.isArray(value)) throw new Error(`no list at ${keys.join('.')}`);
  return value.map((_, index) => numberAt(value, index));
}

/** A list inside parsed data. */
export function listAt(data: unknown, ...keys: readonly (string | number)[]): unknown[] {
  const value = at(data, ...keys);
  if (!Array.isArray(value)) throw new Error(`no list at ${keys.join('.')}`);
  return value;
}
