import type { Instant } from '@/lib/units/instant';
import type { Tx } from '@/prisma/client';
import { findRevision, type Revision } from '@/prisma/data/revisions';
import type { Refusal } from './command-result';

export type DraftRefusal = Refusal<'no-revision' | 'frozen' | 'changed-meanwhile'>;

export interface DraftEdit {
  readonly revisionId: string;
  /** `updatedAt` of the revision as the form showed it. */
  readonly seenAt: Instant;
  readonly nowAt: Instant;
}

/**
 * Takes a draft revision for a change and marks it as changed. Refused when it is frozen, or when somebody else
 * changed it since the form was opened: their work would be lost.
 */
export async function takeDraft(
  tx: Tx,
  { revisionId, seenAt, nowAt }: DraftEdit,
): Promise<{ readonly ok: true; readonly revision: Revision } | DraftRefusal> {
  const revision = await findRevision(tx, revisionId);
  if (revision === null) {
    return { ok: false, code: 'no-revision', message: 'This revision is not there any more. Go back to Models.' };
  }
  if (revision.frozenAt !== null) {
    const message = `Revision ${revision.letter} was frozen and is never changed again. Make the next revision, and change that.`;
    return { ok: false, code: 'frozen', message };
  }
  if (revision.updatedAt !== seenAt) {
    const message =
      'Somebody else just changed this revision. What you typed is still here: open the model in another window, compare, and save again after reloading.';
    return { ok: false, code: 'changed-meanwhile', message };
  }
  // At least a millisecond later than before, so that the next form sees that there was a change.
  const updatedAt = new Date(Math.max(nowAt, revision.updatedAt + 1));
  await tx.revision.update({ where: { id: revisionId }, data: { updatedAt } });
  return { ok: true, revision };
}

/** Ids among `ids` that name no material: a form that was open for long may name one that is gone. */
export async function missingMaterials(tx: Tx, ids: readonly (string | null)[]): Promise<string[]> {
  const wanted = [...new Set(ids.filter((id): id is string => id !== null))];
  const found = await tx.material.findMany({ where: { id: { in: wanted } }, select: { id: true } });
  const there = new Set(found.map((row) => row.id));
  return wanted.filter((id) => !there.has(id));
}

export const NO_MATERIAL: Refusal<'no-material'> = {
  ok: false,
  code: 'no-material',
  message: 'One of the chosen materials is not in Stock any more. Choose another.',
};
