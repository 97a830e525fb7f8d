import type { DbReader } from '@/prisma/client';

export interface PersonName {
  readonly id: string;
  readonly name: string;
}

/** People who work in the shop now, by name. */
export async function listActivePeople(reader: DbReader): Promise<PersonName[]> {
  return reader.person.findMany({
    where: { isActive: true },
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
  });
}
