import { randomUUID } from 'node:crypto';
import type { RouteInput } from '@/lib/contracts/route-forms';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { listOperationPlanning, saveOperationPlanning } from '@/prisma/data/operation-planning';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, missingMaterials, NO_MATERIAL, takeDraft } from './draft-revision';
import { draftTx } from './draft-tx';

export type SaveRouteResult = Done | DraftRefusal | Refusal<'no-material' | 'no-anchor'>;

/** Replaces the route of a draft revision. The contract has checked that needs name operations above. */
export function saveRevisionRoute(
  database: Db,
  revisionId: string,
  input: RouteInput,
  nowAt: Instant,
): Promise<SaveRouteResult> {
  return draftTx(database, async (tx): Promise<SaveRouteResult> => {
    const draft = await takeDraft(tx, { revisionId, seenAt: input.seenAt, nowAt });
    if (!draft.ok) return draft;
    const { operations } = input;
    if (
      (
        await missingMaterials(
          tx,
          operations.map((row) => row.materialId),
        )
      ).length > 0
    )
      return NO_MATERIAL;
    const positionOf = new Map(draft.revision.anchors.map((anchor) => [anchor.id, anchor.position]));
    const lost = operations.findIndex((row) => row.anchorIds.some((id) => !positionOf.has(id)));
    if (lost >= 0) {
      const message = 'An anchor that this glue-up sets is not there any more. Reload the page.';
      return { ok: false, code: 'no-anchor', message, field: `operations.${lost}.anchorIds` };
    }

    const planning = await listOperationPlanning(tx, [revisionId]);
    await tx.routeOperation.deleteMany({ where: { revisionId } });
    const known = new Set(draft.revision.operations.map((operation) => operation.id));
    const idOf = new Map(operations.map(({ ref }) => [ref, known.has(ref) ? ref : randomUUID()]));
    const id = (ref: string) => idOf.get(ref) ?? ref;
    await tx.routeOperation.createMany({
      data: operations.map((row, index) => ({
        id: id(row.ref),
        revisionId,
        position: index + 1,
        name: row.name,
        kind: row.kind,
        attendedMinutes: row.minutes,
        materialId: row.kind === 'work' ? null : row.materialId,
        anchorPositions:
          row.kind === 'glue'
            ? row.anchorIds.map((anchorId) => positionOf.get(anchorId) ?? 0).sort((a, b) => a - b)
            : [],
        caution: row.caution,
      })),
    });
    // What the plan knows of an operation stays with it.
    const kept = new Set(operations.map(({ ref }) => ref));
    await saveOperationPlanning(
      tx,
      [...planning.values()].filter((row) => kept.has(row.operationId)),
    );
    await tx.operationNeed.createMany({
      data: operations.flatMap(({ ref, needs }) =>
        needs.map(({ after, wait }) => ({ operationId: id(ref), afterOperationId: id(after), wait })),
      ),
    });
    return DONE;
  });
}
