import { createHash } from 'node:crypto';
import { mkdir, open, rename } from 'node:fs/promises';
import path from 'node:path';
import { type Db, writeTx } from '@/prisma/client';
import { DONE, type Done, type Refusal } from './command-result';

/** Longest data sheet taken. Chosen: a scan of a few pages. */
export const LONGEST_SHEET_BYTES = 10 * 1024 * 1024;

/** The kinds of file that are taken, by how they begin. */
const KINDS = [
  { ending: 'pdf', begins: [0x25, 0x50, 0x44, 0x46] },
  { ending: 'png', begins: [0x89, 0x50, 0x4e, 0x47] },
  { ending: 'jpg', begins: [0xff, 0xd8, 0xff] },
] as const;

export interface SheetFile {
  /** As it was called where it came from. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** YYYY-MM-DD; null: not said. */
  readonly issuedOn: string | null;
}

/** Folder of the data sheets within the data folder. */
export function sheetFolder(dataDir: string): string {
  return path.join(dataDir, 'data-sheets');
}

/**
 * Keeps the data sheet that came with a lot. The file is named after its content, so that one sheet of many lots is one
 * file and none is ever overwritten; it is on the disk before the lot names it.
 */
export async function saveLotSheet(
  database: Db,
  dataDir: string,
  lotId: string,
  { name, bytes, issuedOn }: SheetFile,
): Promise<Done | Refusal<'no-lot' | 'too-long' | 'wrong-kind'>> {
  if (bytes.length > LONGEST_SHEET_BYTES) {
    return { ok: false, code: 'too-long', message: 'This file is longer than 10 MB.' };
  }
  const kind = KINDS.find(({ begins }) => begins.every((byte, index) => bytes[index] === byte));
  if (kind === undefined) {
    return { ok: false, code: 'wrong-kind', message: 'Only PDF, PNG and JPEG files are kept.' };
  }
  const sheetFile = `${createHash('sha256').update(bytes).digest('hex')}.${kind.ending}`;
  await keep(sheetFolder(dataDir), sheetFile, bytes);
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-lot'>> => {
    const sheetName =
      name
        .replace(/[\p{Cc}/\\]/gu, ' ')
        .trim()
        .slice(0, 120) || `data sheet.${kind.ending}`;
    const { count } = await tx.lot.updateMany({
      where: { id: lotId },
      data: { sheetName, sheetFile, sheetOn: issuedOn },
    });
    return count === 1 ? DONE : { ok: false, code: 'no-lot', message: 'This lot is not in Stock any more.' };
  });
}

async function keep(folder: string, name: string, bytes: Uint8Array): Promise<void> {
  await mkdir(folder, { recursive: true });
  const part = path.join(folder, `${name}.part`);
  const file = await open(part, 'w', 0o600);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(part, path.join(folder, name));
}
