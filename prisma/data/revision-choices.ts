import type { DbReader } from '@/prisma/client';

/** A revision that a batch can be opened of. */
export interface RevisionChoice {
  readonly id: string;
  readonly modelName: string;
  readonly letter: string;
  readonly isFrozen: boolean;
  readonly operationCount: number;
}

/** Revisions of all models in use, by model name, the newest revision of each first. */
export async function listRevisionChoices(reader: DbReader): Promise<RevisionChoice[]> {
  const rows = await reader.revision.findMany({
    where: { model: { isArchived: false } },
    select: {
      id: true,
      letter: true,
      frozenAt: true,
      model: { select: { name: true } },
      _count: { select: { operations: true } },
    },
    orderBy: [{ model: { name: 'asc' } }, { createdAt: 'desc' }],
  });
  return rows.map((row) => ({
    id: row.id,
    modelName: row.model.name,
    letter: row.letter,
    isFrozen: row.frozenAt !== null,
    operationCount: row._count.operations,
  }));
}
