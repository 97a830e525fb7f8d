import 'server-only';
import { notFound, redirect } from 'next/navigation';
import { db } from '@/prisma/client';
import { findModel, type Model } from '@/prisma/data/models';
import { findRevision, type Revision } from '@/prisma/data/revisions';

/** The model and its draft, for a screen that changes it. A model without a draft leads back to its page. */
export async function loadDraft(modelId: string): Promise<{ readonly model: Model; readonly revision: Revision }> {
  const database = await db();
  const model = await findModel(database, modelId);
  const newest = model?.revisions[0];
  if (model === null || newest === undefined) notFound();
  if (newest.frozenAt !== null) redirect(`/models/${modelId}`);
  const revision = await findRevision(database, newest.id);
  if (revision === null) notFound();
  return { model, revision };
}
