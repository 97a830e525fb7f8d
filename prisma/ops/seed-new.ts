import type { Instant } from '@/lib/units/instant';
import type { Db } from '../client';
import { createDb } from '../client';
import { loadDemo } from '../seed/load-demo';
import { loadStartingMaterials } from '../seed/load-starting-materials';
import { STARTING_MATERIALS } from '../seed/starting-materials';
import type { Environment } from './environment';

/** Whether nobody has put anything of a workshop into a database yet; the starting materials do not count. */
export async function isEmptyWorkshop(db: Db): Promise<boolean> {
  const counts = [
    await db.model.count(),
    await db.batch.count(),
    await db.material.count({ where: { id: { notIn: STARTING_MATERIALS.map((material) => material.id) } } }),
    await db.person.count(),
    await db.sensor.count(),
  ];
  return counts.every((count) => count === 0);
}

/**
 * Gives a database that was never served the demo workshop, or only the starting materials when START_EMPTY asks for
 * it. True when it did. A workshop that its makers emptied themselves is left alone: it has been served before.
 */
export async function seedIfNew(
  { databaseUrl, startsEmpty }: Pick<Environment, 'databaseUrl' | 'startsEmpty'>,
  nowAt: Instant,
): Promise<boolean> {
  const db = await createDb(databaseUrl);
  try {
    const wasServed = (await db.serverRun.count()) > 0;
    if (wasServed || !(await isEmptyWorkshop(db))) return false;
    if (startsEmpty) await loadStartingMaterials(db, nowAt);
    else await loadDemo(db, nowAt);
    return true;
  } finally {
    await db.$disconnect();
  }
}
