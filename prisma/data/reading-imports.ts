import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';

/** The newest import of a file with this SHA-256, or null. */
export async function findImportByHash(
  reader: DbReader,
  fileHash: string,
): Promise<{ readonly sensorName: string; readonly importedAt: Instant } | null> {
  const row = await reader.readingImport.findFirst({
    where: { fileHash },
    select: { importedAt: true, sensor: { select: { name: true } } },
    orderBy: { importedAt: 'desc' },
  });
  return row === null ? null : { sensorName: row.sensor.name, importedAt: row.importedAt.getTime() };
}

/** A confirmed import, with what is needed to compute it again. */
export interface NewReadingImport {
  readonly sensorId: string;
  readonly fileName: string;
  readonly fileHash: string;
  /** How the file was understood and what was answered, as JSON. */
  readonly settings: object;
  readonly rowsAccepted: number;
  readonly rowsDuplicate: number;
  readonly rowsRefused: number;
  readonly firstAt: Instant;
  readonly lastAt: Instant;
  readonly importedAt: Instant;
}

export async function insertReadingImport(tx: Tx, row: NewReadingImport): Promise<void> {
  const { settings, firstAt, lastAt, importedAt, ...rest } = row;
  await tx.readingImport.create({
    data: {
      ...rest,
      settings: JSON.parse(JSON.stringify(settings)),
      firstAtMs: BigInt(firstAt),
      lastAtMs: BigInt(lastAt),
      importedAt: new Date(importedAt),
    },
  });
}
