import type { Finding } from '@/lib/spec/finding';
import { type FindingChange, findingChanges } from '@/lib/spec/finding-changes';
import { findingsOf } from '@/lib/spec/findings-of';
import { specContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { listSpecModels } from '@/prisma/data/spec-models';
import { listOpenBatchFindings } from '@/prisma/data/spec-reports';
import { type ReadSpecShop, readSpecShop } from '@/prisma/data/spec-shop';

/** A model in use and what is found of its newest revision. */
export interface JudgedModel {
  readonly model: SpecModel;
  readonly findings: readonly Finding[];
}

/** An open batch of which something is found otherwise than when it was opened. */
export interface AffectedBatch {
  readonly batchId: string;
  readonly number: number;
  readonly modelName: string;
  readonly revisionLetter: string;
  readonly changes: readonly FindingChange[];
}

export interface ShopFindings extends ReadSpecShop {
  readonly judged: readonly JudgedModel[];
  readonly affected: readonly AffectedBatch[];
}

/** Every model in use judged now, and the open batches that a change since their opening touches. */
export async function readShopFindings(reader: DbReader, now: Instant): Promise<ShopFindings> {
  const read = await readSpecShop(reader, now);
  const context = specContext(read.shop, { withFixes: false });
  const judged = read.inUse.map((model) => ({ model, findings: findingsOf(model, context) }));
  const batches = await listOpenBatchFindings(reader);
  const revisionIds = [...new Set(batches.map(({ revisionId }) => revisionId))];
  const models = await listSpecModels(reader, revisionIds, read.shelf);
  const ofRevision = new Map(
    models.map((model) => [model.revisionId, { model, findings: findingsOf(model, context) }]),
  );
  const affected = batches.flatMap(({ batchId, number, revisionId, taken }) => {
    const today = ofRevision.get(revisionId);
    if (today === undefined || taken === null) return [];
    const changes = findingChanges(taken.findings, today.findings);
    const { modelName, revisionLetter } = today.model;
    return changes.length === 0 ? [] : [{ batchId, number, modelName, revisionLetter, changes }];
  });
  return { ...read, judged, affected };
}
