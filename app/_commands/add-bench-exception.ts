import type { BenchExceptionInput } from '@/lib/contracts/bench-hours';
import { type Db, writeTx } from '@/prisma/client';

/**
 * Writes down a day that differs for one person, or for the whole shop when `personId` is null. `opensHours` is for the
 * whole shop: everybody is there in these hours, beside their own.
 */
export async function addBenchException(
  database: Db,
  personId: string | null,
  { onDate, from, to, reason, opensHours = false }: BenchExceptionInput & { readonly opensHours?: boolean },
): Promise<void> {
  await writeTx(database, (tx) =>
    tx.benchException.create({ data: { personId, onDate, fromMinute: from, toMinute: to, opensHours, reason } }),
  );
}
