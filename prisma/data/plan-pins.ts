import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';

/** What the maker wants at a certain hour. */
export interface PlanPin {
  readonly batchId: string;
  /** The operation and its visit: as the plan names its tasks within a batch. */
  readonly taskKey: string;
  readonly startAt: Instant;
  /** null: whoever can. */
  readonly personId: string | null;
}

/** The pins of open batches. */
export async function listPlanPins(reader: DbReader): Promise<PlanPin[]> {
  const rows = await reader.planPin.findMany({
    where: { batch: { status: 'open' } },
    select: { batchId: true, taskKey: true, startAt: true, personId: true },
    orderBy: { startAt: 'asc' },
  });
  return rows.map((row) => ({ ...row, startAt: row.startAt.getTime() }));
}
