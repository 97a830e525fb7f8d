import { nextMixNumber } from '@/lib/batch/decide-mix';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import type { BatchAction, CorrectableAction } from '@/lib/contracts/batch-action';
import type { DbReader } from '@/prisma/client';
import { findSheetMaterial, lotsNotOf } from '@/prisma/data/mix-materials';

/** Why the server cannot complete what a maker said of a mix. */
export type BodyFault =
  | { readonly code: 'unknown-material'; readonly materialId: string }
  | { readonly code: 'no-sheet'; readonly materialName: string }
  | { readonly code: 'unknown-lots'; readonly materialName: string; readonly lotIds: readonly string[] }
  | { readonly code: 'mix-of-other-batch'; readonly mixId: string };

export type CompletedBody<Body> = { readonly ok: true; readonly body: Body } | ({ readonly ok: false } & BodyFault);

type MixStarted = Extract<BatchEventBody, { kind: 'mix-started' }>;
type MixStartedAction = Extract<BatchAction, { kind: 'mix-started' }>;

/**
 * What is stored for something a maker said: a mix gets its number and the material's name and data sheet as they
 * stand now. A mix put in place of another of the same material keeps the number and the sheet it had.
 */
export async function completedBody(
  reader: DbReader,
  batchId: string,
  batch: KnownBatch,
  action: BatchAction,
): Promise<CompletedBody<BatchEventBody>> {
  if (action.kind !== 'corrected') return completedAction(reader, batchId, batch, action, null);
  const { kind, seq, reason, replacement } = action;
  if (replacement === null) return { ok: true, body: { kind, seq, reason, replacement } };
  const original = batch.state.history.find((entry) => entry.event.seq === seq)?.event.body ?? null;
  const old = original?.kind === 'mix-started' ? original : null;
  const completed = await completedAction(reader, batchId, batch, replacement.action, old);
  if (!completed.ok) return completed;
  return { ok: true, body: { kind, seq, reason, replacement: { at: replacement.at, body: completed.body } } };
}

async function completedAction(
  reader: DbReader,
  batchId: string,
  batch: KnownBatch,
  action: CorrectableAction,
  old: MixStarted | null,
): Promise<CompletedBody<CorrectableBody>> {
  if (action.kind !== 'mix-started') return { ok: true, body: action };
  const fault = await mixFault(reader, batchId, action);
  if (fault !== null) return fault;
  const number = old?.number ?? nextMixNumber(batch);
  if (old !== null && old.materialId === action.materialId) {
    return { ok: true, body: { ...action, number, materialName: old.materialName, sheet: old.sheet } };
  }
  const material = await findSheetMaterial(reader, action.materialId);
  if (material === null) return { ok: false, code: 'unknown-material', materialId: action.materialId };
  if (material.sheet === null) return { ok: false, code: 'no-sheet', materialName: material.name };
  return { ok: true, body: { ...action, number, materialName: material.name, sheet: material.sheet } };
}

async function mixFault(
  reader: DbReader,
  batchId: string,
  { mixId, materialId, lotIds }: MixStartedAction,
): Promise<({ readonly ok: false } & BodyFault) | null> {
  const row = await reader.mix.findUnique({ where: { id: mixId }, select: { batchId: true } });
  if (row !== null && row.batchId !== batchId) return { ok: false, code: 'mix-of-other-batch', mixId };
  const strange = lotIds.length === 0 ? [] : await lotsNotOf(reader, materialId, lotIds);
  if (strange.length === 0) return null;
  const material = await findSheetMaterial(reader, materialId);
  if (material === null) return { ok: false, code: 'unknown-material', materialId };
  return { ok: false, code: 'unknown-lots', materialName: material.name, lotIds: strange };
}

/** Whether a stored body is what this action was, whatever the server added to it. */
export function isSameAction(body: BatchEventBody, action: BatchAction): boolean {
  return inOrder(asSaid(body)) === inOrder(action);
}

function asSaid(body: BatchEventBody): unknown {
  if (body.kind === 'corrected' && body.replacement !== null) {
    const { body: replaced, at } = body.replacement;
    return { ...body, replacement: { at, action: asSaid(replaced) } };
  }
  if (body.kind !== 'mix-started') return body;
  const { number: _number, materialName: _name, sheet: _sheet, ...said } = body;
  return said;
}

/** JSON with its keys in order: one engine keeps their order, the other does not. */
function inOrder(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
