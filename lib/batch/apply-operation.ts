import type { AnomalyCode } from '@/lib/batch/anomaly';
import type { BatchDraft, DraftMix, DraftOperation, DraftPiece } from '@/lib/batch/batch-draft';
import type { JointSetting } from '@/lib/batch/batch-state';
import type { BatchEventBody } from '@/lib/batch/events';
import type { Instant } from '@/lib/units/instant';

type Body<K extends BatchEventBody['kind']> = Extract<BatchEventBody, { kind: K }>;

/** Attended work finished on pieces. */
export function applyWork(draft: BatchDraft, at: Instant, body: Body<'work-done'>): AnomalyCode | null {
  const index = draft.index.indexOf.get(body.operationId);
  if (index === undefined) return 'unknown-operation';
  if (draft.index.operations[index]?.recordedAs !== 'work') return 'wrong-operation-kind';
  if (body.pieces.length === 0) return 'no-pieces';
  for (const number of body.pieces) {
    const piece = draft.livePiece(number);
    const own = piece?.operations[index];
    if (piece === null || own === undefined || own.doneSeq === draft.seq) continue;
    if (own.doneAt !== null) {
      draft.refuse('already-done', number);
      continue;
    }
    flagBeforeNeeds(draft, piece, index, at);
    own.doneAt = at;
    own.doneSeq = draft.seq;
  }
  return null;
}

/** Joints set with a running mix. */
export function applyJoints(draft: BatchDraft, at: Instant, body: Body<'joints-set'>): AnomalyCode | null {
  const mix = draft.mixes.get(body.mixId);
  if (mix === undefined) return 'unknown-mix';
  const unusable = whyUnusable(mix, at);
  if (unusable !== null) return unusable;
  const operation = draft.index.operations[mix.operationIndex];
  if (operation === undefined || operation.recordedAs !== 'joints') return 'wrong-operation-kind';
  if (body.joints.length === 0) return 'no-pieces';
  const setting = settingWith(draft, mix, at);
  const checked = new Set<number>();
  for (const { piece: number, anchorId } of body.joints) {
    const piece = draft.livePiece(number);
    const own = piece?.operations[mix.operationIndex];
    if (piece === null || own === undefined) continue;
    const anchor = operation.operation.anchorIds.indexOf(anchorId);
    const before = own.joints[anchor];
    if (before === undefined) draft.refuse('unknown-anchor', number);
    else if (before === null) {
      if (!checked.has(number)) flagBeforeNeeds(draft, piece, mix.operationIndex, at);
      checked.add(number);
      own.joints[anchor] = setting;
      mix.jointCount++;
      use(mix, setting);
      completeJoints(own);
    } else if (before.seq !== draft.seq) draft.refuse('already-done', number);
  }
  return null;
}

/** A film spread on pieces with a running mix. */
export function applyCoat(draft: BatchDraft, at: Instant, body: Body<'coat-applied'>): AnomalyCode | null {
  const mix = draft.mixes.get(body.mixId);
  if (mix === undefined) return 'unknown-mix';
  const unusable = whyUnusable(mix, at);
  if (unusable !== null) return unusable;
  const index = mix.operationIndex;
  if (draft.index.operations[index]?.recordedAs !== 'coat') return 'wrong-operation-kind';
  if (body.pieces.length === 0) return 'no-pieces';
  const setting = settingWith(draft, mix, at);
  for (const number of body.pieces) {
    const piece = draft.livePiece(number);
    const own = piece?.operations[index];
    if (piece === null || own === undefined || own.doneSeq === draft.seq) continue;
    if (own.doneAt !== null) {
      draft.refuse('already-done', number);
      continue;
    }
    flagBeforeNeeds(draft, piece, index, at);
    own.coat = setting;
    own.doneAt = at;
    own.doneSeq = draft.seq;
    mix.coatCount++;
    use(mix, setting);
  }
  return null;
}

/** A film whose recoat window closed, washed and sanded. */
export function applyRemedy(draft: BatchDraft, at: Instant, body: Body<'window-remedied'>): AnomalyCode | null {
  const index = draft.index.indexOf.get(body.operationId);
  if (index === undefined) return 'unknown-operation';
  if (draft.index.operations[index]?.recordedAs === 'work') return 'wrong-operation-kind';
  if (body.pieces.length === 0) return 'no-pieces';
  for (const number of body.pieces) {
    const own = draft.livePiece(number)?.operations[index];
    if (own === undefined) continue;
    if (own.doneAt === null || own.doneAt > at) draft.refuse('not-done', number);
    else own.remediedAt = own.remediedAt === null ? at : Math.min(own.remediedAt, at);
  }
  return null;
}

function whyUnusable(mix: DraftMix, at: Instant): AnomalyCode | null {
  if (at < mix.mixedAt) return 'before-mix';
  // What was set before the cup was put away may be written down afterwards.
  return mix.closedAt !== null && at > mix.closedAt ? 'mix-closed' : null;
}

function settingWith(draft: BatchDraft, mix: DraftMix, at: Instant): JointSetting {
  return { mixId: mix.mixId, at, late: mix.potLife.ok && at > mix.potLife.lowerAt, seq: draft.seq };
}

function use(mix: DraftMix, setting: JointSetting): void {
  if (setting.late) mix.lateCount++;
  mix.lastUsedAt = mix.lastUsedAt === null ? setting.at : Math.max(mix.lastUsedAt, setting.at);
}

function completeJoints(own: DraftOperation): void {
  let doneAt = Number.NEGATIVE_INFINITY;
  let doneSeq = 0;
  for (const joint of own.joints) {
    if (joint === null) return;
    doneAt = Math.max(doneAt, joint.at);
    doneSeq = Math.max(doneSeq, joint.seq);
  }
  own.doneAt = doneAt;
  own.doneSeq = doneSeq;
}

function flagBeforeNeeds(draft: BatchDraft, piece: DraftPiece, index: number, at: Instant): void {
  const early = draft.index.operations[index]?.needs.some((need) => {
    const needed = need.index < 0 ? undefined : piece.operations[need.index];
    return needed !== undefined && (needed.doneAt === null || needed.doneAt > at);
  });
  if (early === true) draft.flag('before-needs', piece.number);
}
