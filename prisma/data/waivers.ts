import type { SpecWaiver } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';

/** A waiver as it was granted, with what became of it. */
export interface Waiver extends SpecWaiver {
  /** Null while it stands. */
  readonly withdrawnAt: Instant | null;
}

/** Waivers of revisions, oldest first, withdrawn ones too. */
export async function listWaivers(reader: DbReader, revisionIds: readonly string[]): Promise<Waiver[]> {
  const waivers: Waiver[] = [];
  for (const ids of chunked(revisionIds)) {
    const rows = await reader.waiver.findMany({
      where: { revisionId: { in: ids } },
      select: {
        id: true,
        revisionId: true,
        ruleId: true,
        subject: true,
        reason: true,
        grantedAt: true,
        withdrawnAt: true,
        person: { select: { name: true } },
      },
      orderBy: [{ grantedAt: 'asc' }, { id: 'asc' }],
    });
    waivers.push(
      ...rows.map(({ id, person, grantedAt, withdrawnAt, ...row }) => ({
        ...row,
        waiverId: id,
        personName: person?.name ?? 'somebody no longer listed',
        grantedAt: grantedAt.getTime(),
        withdrawnAt: withdrawnAt?.getTime() ?? null,
      })),
    );
  }
  return waivers;
}
