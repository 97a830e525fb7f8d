import type { BatchState, MixState } from '@/lib/batch/batch-state';
import type { Tx } from '@/prisma/client';
import { chunked } from './batches';

/**
 * The rows of Mix, MixLot and Joint only repeat what the events say, so that lots and pull tests can name them. They
 * are brought from one state to the next within the transaction that appends the event; a correction is no exception.
 */
export interface RowChanges {
  readonly addedMixes: readonly MixState[];
  readonly changedMixes: readonly MixState[];
  readonly removedMixIds: readonly string[];
  readonly joints: readonly JointChange[];
}

/** The joints of one anchor in these pieces belong to this mix from now on; null: to none. */
export interface JointChange {
  readonly anchorId: string;
  readonly mixId: string | null;
  readonly pieces: readonly number[];
}

/** What must be written to the rows when a batch goes from one state to the next. */
export function rowChanges(before: BatchState, after: BatchState): RowChanges {
  const old = new Map(before.mixes.map((mix) => [mix.mixId, mix]));
  const kept = new Set(after.mixes.map((mix) => mix.mixId));
  return {
    addedMixes: after.mixes.filter((mix) => !old.has(mix.mixId)),
    changedMixes: after.mixes.filter((mix) => {
      const was = old.get(mix.mixId);
      return was !== undefined && mixRow(was) !== mixRow(mix);
    }),
    removedMixIds: before.mixes.map((mix) => mix.mixId).filter((mixId) => !kept.has(mixId)),
    joints: jointChanges(before, after),
  };
}

/** What of a mix its row holds, as one comparable text. */
function mixRow(mix: MixState): string {
  return JSON.stringify([mix.number, mix.materialId, mix.massG, mix.mixedAt, mix.lotIds]);
}

/** The mix each joint was last set with, by anchor and piece. */
function mixOfJoints(state: BatchState): Map<string, Map<number, string>> {
  const byAnchor = new Map<string, Map<number, string>>();
  const setAt = new Map<string, number>();
  for (const piece of state.pieces) {
    for (const { anchorId, set } of piece.operations.flatMap((operation) => operation.joints)) {
      const joint = `${piece.number} ${anchorId}`;
      if (set === null || set.at < (setAt.get(joint) ?? 0)) continue;
      setAt.set(joint, set.at);
      const pieces = byAnchor.get(anchorId) ?? new Map<number, string>();
      byAnchor.set(anchorId, pieces.set(piece.number, set.mixId));
    }
  }
  return byAnchor;
}

function jointChanges(before: BatchState, after: BatchState): JointChange[] {
  const old = mixOfJoints(before);
  const now = mixOfJoints(after);
  const changes: JointChange[] = [];
  for (const anchorId of new Set([...old.keys(), ...now.keys()])) {
    const was = old.get(anchorId);
    const is = now.get(anchorId);
    const byMix = new Map<string | null, number[]>();
    for (const piece of new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])])) {
      const mixId = is?.get(piece) ?? null;
      if (mixId === (was?.get(piece) ?? null)) continue;
      byMix.set(mixId, [...(byMix.get(mixId) ?? []), piece]);
    }
    for (const [mixId, pieces] of byMix) changes.push({ anchorId, mixId, pieces });
  }
  return changes;
}

/** Writes the changes, and the batch's status with them. */
export async function saveRows(tx: Tx, batchId: string, before: BatchState, after: BatchState): Promise<void> {
  const changes = rowChanges(before, after);
  for (const mix of changes.addedMixes) {
    await tx.mix.create({ data: { id: mix.mixId, batchId, ...mixColumns(mix) } });
    await saveLots(tx, mix);
  }
  for (const mix of changes.changedMixes) {
    await tx.mix.update({ where: { id: mix.mixId }, data: mixColumns(mix) });
    await tx.mixLot.deleteMany({ where: { mixId: mix.mixId } });
    await saveLots(tx, mix);
  }
  for (const { anchorId, mixId, pieces } of changes.joints) {
    for (const numbers of chunked(pieces)) {
      await tx.joint.updateMany({ where: { anchorId, piece: { batchId, number: { in: numbers } } }, data: { mixId } });
    }
  }
  for (const ids of chunked(changes.removedMixIds)) await tx.mix.deleteMany({ where: { id: { in: ids } } });
  if (before.finishedAt !== after.finishedAt) {
    await tx.batch.update({
      where: { id: batchId },
      data:
        after.finishedAt === null
          ? { status: 'open', finishedAt: null }
          : { status: 'finished', finishedAt: new Date(after.finishedAt) },
    });
  }
}

function mixColumns(mix: MixState) {
  return { number: mix.number, materialId: mix.materialId, massG: mix.massG, mixedAt: new Date(mix.mixedAt) };
}

async function saveLots(tx: Tx, mix: MixState): Promise<void> {
  if (mix.lotIds.length === 0) return;
  await tx.mixLot.createMany({ data: mix.lotIds.map((lotId) => ({ mixId: mix.mixId, lotId })) });
}
