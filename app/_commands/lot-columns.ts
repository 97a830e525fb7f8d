import type { LotInput } from '@/lib/contracts/material-forms';
import type { Tx } from '@/prisma/client';
import { findMaterial, hasSheet } from '@/prisma/data/materials';
import type { Refusal } from './command-result';

export const LOT_TAKEN: Refusal<'code-taken'> = {
  ok: false,
  code: 'code-taken',
  message: 'A lot of this material with this code and part is in Stock already.',
  field: 'code',
};

/** What a lot of this material may not be. */
export async function lotRefusal(
  tx: Tx,
  materialId: string,
  { part }: LotInput,
): Promise<Refusal<'no-material' | 'part-not-whole'> | null> {
  const material = await findMaterial(tx, materialId);
  if (material === null) return { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
  if (hasSheet(material.kind) || part === 'whole') return null;
  const message = 'Only adhesives and coatings come as resin and hardener.';
  return { ok: false, code: 'part-not-whole', message, field: 'part' };
}

/** A lot as its row holds it. */
export function lotColumns({ unit, ...columns }: LotInput) {
  return { ...columns, quantityUnit: unit };
}
