import type { Instant } from '@/lib/units/instant';
import { createDb } from '../client';
import { isEmptyWorkshop } from '../seed/empty-workshop';
import { loadDemo } from '../seed/load-demo';
import { prepareShop } from '../seed/prepare-shop';
import type { Environment } from './environment';

/**
 * Gives a database that was never served the demo workshop, or only settings and the starting materials when
 * START_EMPTY asks for it. True when it did. A workshop that its makers emptied themselves is left alone: it has been served before.
 */
export async function seedIfNew(
  { databaseUrl, startsEmpty }: Pick<Environment, 'databaseUrl' | 'startsEmpty'>,
  nowAt: Instant,
): Promise<boolean> {
  const db = await createDb(databaseUrl);
  try {
    const wasServed = (await db.serverRun.count()) > 0;
    if (wasServed || !(await isEmptyWorkshop(db))) return false;
    if (startsEmpty) await prepareShop(db, nowAt);
    else await loadDemo(db, nowAt);
    return true;
  } finally {
    await db.$disconnect();
  }
}
