import type { DbReader } from '@/prisma/client';
import { STARTING_MATERIALS } from './starting-materials';

/**
 * Whether nobody has put anything of a workshop into a database yet. Settings and the starting materials do not count:
 * every new shop has them.
 */
export async function isEmptyWorkshop(reader: DbReader): Promise<boolean> {
  const counts = [
    await reader.batch.count(),
    await reader.model.count(),
    await reader.person.count(),
    await reader.sensor.count(),
    await reader.lot.count(),
    await reader.pullSeries.count(),
    await reader.plan.count(),
    await reader.material.count({ where: { id: { notIn: STARTING_MATERIALS.map(({ id }) => id) } } }),
  ];
  return counts.every((count) => count === 0);
}
