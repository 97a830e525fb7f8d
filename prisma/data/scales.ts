import type { DbReader } from '@/prisma/client';

/** What pulls are read on. */
export interface Scale {
  readonly id: string;
  readonly name: string;
  readonly greatestN: number;
  /** YYYY-MM-DD; null: never. */
  readonly checkedOn: string | null;
  readonly note: string;
  readonly isArchived: boolean;
}

const COLUMNS = { id: true, name: true, greatestN: true, checkedOn: true, note: true, isArchived: true } as const;

/** Scales in use, by name. */
export async function listScales(reader: DbReader): Promise<Scale[]> {
  return reader.scale.findMany({ where: { isArchived: false }, select: COLUMNS, orderBy: { name: 'asc' } });
}

export async function findScale(reader: DbReader, scaleId: string): Promise<Scale | null> {
  return reader.scale.findUnique({ where: { id: scaleId }, select: COLUMNS });
}
