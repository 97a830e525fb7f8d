import { specContext } from '@/lib/spec/spec-context';
import { type SpecReport, specReport } from '@/lib/spec/spec-report';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { listSpecModels } from '@/prisma/data/spec-models';
import { readSpecShop } from '@/prisma/data/spec-shop';

/** What the rules find of one revision now; null when there is none of that id. */
export async function judgeRevision(reader: DbReader, revisionId: string, now: Instant): Promise<SpecReport | null> {
  const { shop, shelf } = await readSpecShop(reader, now);
  const [model] = await listSpecModels(reader, [revisionId], shelf);
  return model === undefined ? null : specReport(model, specContext(shop, { withFixes: true }));
}
