import 'server-only';
import type { CalibrationKey } from '@/lib/pulltest/calibration';
import { type AnchorInUse, type MovedAnchor, movedAnchors } from '@/lib/pulltest/moved-anchors';
import type { PulledBond } from '@/lib/spec/bond-book';
import { type FindingChange, findingChanges } from '@/lib/spec/finding-changes';
import { findingsOf } from '@/lib/spec/findings-of';
import { modelFacts } from '@/lib/spec/model-facts';
import { type SpecContext, specContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { BondBelief } from '@/lib/strength/bond-belief';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { type CalibrationBasis, calibratedBond } from '@/prisma/data/pulled-bonds';
import { listSpecModels } from '@/prisma/data/spec-models';
import { listOpenBatchFindings } from '@/prisma/data/spec-reports';
import { readSpecShop } from '@/prisma/data/spec-shop';

/** A revision of which something would be found otherwise. */
export interface ChangedModel {
  readonly model: SpecModel;
  readonly changes: readonly FindingChange[];
}

/** An anchor whose lower value would move. */
export interface MovedInUse extends MovedAnchor {
  readonly modelName: string;
  readonly anchorName: string;
}

/** What a calibration would change. */
export interface CalibrationEffect {
  /** What is believed of the bond now and then; null: nothing. */
  readonly before: BondBelief | null;
  readonly after: BondBelief | null;
  /** Figures of the wood or the glue are missing, so that the pulls cannot be used. */
  readonly isUsable: boolean;
  readonly models: readonly ChangedModel[];
  readonly batches: readonly (ChangedModel & { readonly batchId: string; readonly number: number })[];
  readonly moved: readonly MovedInUse[];
}

/**
 * The models in use and the open batches that would be judged otherwise with `basis` in place of what the shop knows of
 * this wood, glue and wire now; null takes that away.
 */
export async function calibrationEffect(
  reader: DbReader,
  key: CalibrationKey,
  basis: CalibrationBasis | null,
  nowAt: Instant,
): Promise<CalibrationEffect> {
  const { shop, shelf, inUse } = await readSpecShop(reader, nowAt);
  const isOfKey = (bond: PulledBond) =>
    bond.woodMaterialId === key.woodId &&
    bond.adhesiveMaterialId === key.adhesiveId &&
    bond.wireMaterialId === key.wireId;
  const bond = basis === null ? null : calibratedBond(basis, shelf, shop.settings.strength);
  const others = shop.bonds.filter((one) => !isOfKey(one));
  const contexts = {
    before: specContext(shop, { withFixes: false }),
    after: specContext({ ...shop, bonds: bond === null ? others : [...others, bond] }, { withFixes: false }),
  };
  const changed = (model: SpecModel): ChangedModel => {
    const changes = findingChanges(findingsOf(model, contexts.before), findingsOf(model, contexts.after));
    return { model, changes };
  };
  const batches = await listOpenBatchFindings(reader);
  const revisionIds = [...new Set(batches.map(({ revisionId }) => revisionId))];
  const ofRevision = new Map(
    (await listSpecModels(reader, revisionIds, shelf)).map((model) => [model.revisionId, changed(model)]),
  );
  const adhesive = shelf.get(key.adhesiveId)?.figures;
  const beliefIn = (context: SpecContext) =>
    adhesive?.kind !== 'adhesive'
      ? null
      : context.bonds.evidence(
          { woodMaterialId: key.woodId, adhesiveMaterialId: key.adhesiveId, wireMaterialId: key.wireId },
          adhesive.sheet.bondClass,
        ).belief;
  const after = beliefIn(contexts.after);
  return {
    before: beliefIn(contexts.before),
    after,
    isUsable: basis === null || bond !== null,
    models: inUse.map(changed).filter(({ changes }) => changes.length > 0),
    batches: batches.flatMap(({ batchId, number, revisionId }) => {
      const of = ofRevision.get(revisionId);
      return of === undefined || of.changes.length === 0 ? [] : [{ batchId, number, ...of }];
    }),
    moved: movedOf(inUse, key, contexts.before, after),
  };
}

function movedOf(
  models: readonly SpecModel[],
  key: CalibrationKey,
  context: SpecContext,
  after: BondBelief | null,
): readonly MovedInUse[] {
  const names = new Map<string, { readonly modelName: string; readonly anchorName: string }>();
  const anchors = models.flatMap((model): AnchorInUse[] => {
    if (model.wood?.materialId !== key.woodId) return [];
    const { anchors: facts, demand } = modelFacts(model, context);
    return facts.flatMap(({ anchor, of: { design } }): AnchorInUse[] => {
      const isOfKey = anchor.adhesive?.materialId === key.adhesiveId && anchor.wire?.materialId === key.wireId;
      if (!isOfKey || design?.kind !== 'twisted-wire') return [];
      names.set(anchor.anchorId, { modelName: model.modelName, anchorName: anchor.name });
      const requiredN = demand === null ? null : context.settings.requiredFactor * demand.governing.loadN;
      return [{ key: anchor.anchorId, design, requiredN }];
    });
  });
  return movedAnchors(anchors, after, context.settings.strength).flatMap((moved) => {
    const named = names.get(moved.key);
    return named === undefined ? [] : [{ ...moved, ...named }];
  });
}
