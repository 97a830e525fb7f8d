import type { MixState } from '@/lib/batch/batch-state';
import type { ActionWarning, Decision } from '@/lib/batch/decision';
import { ACCEPTED, recordedAs, refused } from '@/lib/batch/decision';
import type { KnownBatch } from '@/lib/batch/evaluation';
import type { BatchEventBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';

type MixStarted = Extract<BatchEventBody, { kind: 'mix-started' }>;

/** The number of the next mix: one more than any mix had that the history tells of, a corrected one included. */
export function nextMixNumber(batch: Pick<KnownBatch, 'state'>): number {
  return everStarted(batch, null).reduce((highest, { body }) => Math.max(highest, body.number), 0) + 1;
}

/** Whether a mix may be started; `replacedSeq` is the event it is put in place of, whose mix it may keep. */
export function decideMixStart(batch: KnownBatch, body: MixStarted, replacedSeq: number | null): Decision {
  const operation = batch.plan.operations.find(({ id }) => id === body.operationId);
  if (operation === undefined) return refused({ code: 'unknown-operation', operationId: body.operationId });
  const kind = recordedAs(operation);
  if (kind === 'work') {
    return refused({ code: 'wrong-operation-kind', operationId: operation.id, recordedAs: kind });
  }
  if (!(body.massG > 0 && Number.isFinite(body.massG))) return refused({ code: 'bad-figure', figure: 'massG' });
  if (!Number.isFinite(body.temperatureC)) return refused({ code: 'bad-figure', figure: 'temperatureC' });
  if (!Number.isSafeInteger(body.number) || body.number < 1) return refused({ code: 'bad-figure', figure: 'number' });
  for (const { seq, body: other } of everStarted(batch, replacedSeq)) {
    if (other.mixId === body.mixId) return refused({ code: 'duplicate-mix', mixId: body.mixId, bySeq: seq });
  }
  for (const { seq, body: other } of everStarted(batch, replacedSeq)) {
    if (other.number !== body.number) continue;
    const nextNumber = nextMixNumber(batch);
    return refused({ code: 'mix-number-taken', number: body.number, nextNumber, bySeq: seq });
  }
  const warnings: ActionWarning[] = [];
  const { materialId } = operation;
  if (materialId !== null && materialId !== body.materialId) {
    warnings.push({ code: 'other-material', plannedMaterialId: materialId, materialId: body.materialId });
  }
  const { maxMassG } = body.sheet;
  if (maxMassG !== undefined && body.massG > maxMassG) {
    warnings.push({ code: 'over-mass-limit', massG: body.massG, maxMassG });
  }
  return { ok: true, warnings };
}

/** Whether a mix may be closed. */
export function decideMixClosing(batch: KnownBatch, at: Instant, mixId: string): Decision {
  const mix = batch.state.mixes.find((candidate) => candidate.mixId === mixId);
  if (mix === undefined) return refused({ code: 'unknown-mix', mixId });
  if (mix.closedAt !== null) {
    return refused({ code: 'mix-closed', mixId, closedAt: mix.closedAt, bySeq: mix.closedSeq ?? 0 });
  }
  if (at < mix.mixedAt) return refused({ code: 'before-mix', mixId, mixedAt: mix.mixedAt });
  if (mix.lastUsedAt !== null && at < mix.lastUsedAt) {
    return refused({ code: 'closed-before-last-use', mixId, lastUsedAt: mix.lastUsedAt });
  }
  return ACCEPTED;
}

/** The mix of this id, if it could be used at the instant; otherwise why not. */
export function usableMix(batch: KnownBatch, at: Instant, mixId: string): MixState | Decision {
  const mix = batch.state.mixes.find((candidate) => candidate.mixId === mixId);
  if (mix === undefined) return refused({ code: 'unknown-mix', mixId });
  if (at < mix.mixedAt) return refused({ code: 'before-mix', mixId, mixedAt: mix.mixedAt });
  if (mix.closedAt !== null && at > mix.closedAt) {
    return refused({ code: 'mix-closed', mixId, closedAt: mix.closedAt, bySeq: mix.closedSeq ?? 0 });
  }
  return mix;
}

/** What is to be said about using a mix at an instant. */
export function potLifeWarnings(mix: MixState, at: Instant): readonly ActionWarning[] {
  const { mixId, potLife } = mix;
  if (potLife.ok) {
    const { lowerAt, centralAt } = potLife;
    return at > lowerAt ? [{ code: 'late', mixId, lowerAt, centralAt }] : [];
  }
  // A one-part material has no pot life to run out.
  return potLife.code === 'no-pot-life' ? [] : [{ code: 'pot-life-not-judged', mixId }];
}

/** Every start of a mix in the history, corrected ones and replacements included, but the one that is replaced. */
function everStarted(
  { state }: Pick<KnownBatch, 'state'>,
  replacedSeq: number | null,
): readonly { readonly seq: number; readonly body: MixStarted }[] {
  return state.history.flatMap(({ event: { seq, body } }) => {
    if (seq === replacedSeq) return [];
    if (body.kind === 'mix-started') return [{ seq, body }];
    if (body.kind !== 'corrected' || body.seq === replacedSeq) return [];
    const replacement = body.replacement?.body;
    return replacement?.kind === 'mix-started' ? [{ seq, body: replacement }] : [];
  });
}
