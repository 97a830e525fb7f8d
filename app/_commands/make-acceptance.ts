import type { AcceptanceInput } from '@/lib/contracts/pull-forms';
import { seededOrder } from '@/lib/pulltest/pull-design';
import type { PullPlan } from '@/lib/pulltest/pull-plan';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { findBatchHead } from '@/prisma/data/batches';
import { appendPullChange, json } from '@/prisma/data/pull-series';
import { sha256 } from '../_server/digest';
import { foldedBatch } from '../_server/known-batches';
import type { Refusal } from './command-result';

export interface MakeAcceptanceRequest {
  readonly input: AcceptanceInput;
  readonly stepMm: number;
  readonly personId: string | null;
  readonly now: Instant;
}

export type MakeAcceptanceResult =
  | { readonly ok: true; readonly seriesId: string }
  | Refusal<'no-batch' | 'no-anchor' | 'no-joints' | 'no-depth'>;

/** The joint of the anchor in one live piece. */
interface SetJoint {
  readonly piece: number;
  readonly mixId: string;
  readonly setAt: Instant;
}

/**
 * Draws so many pieces of every mix of a batch at random, to be pulled at one anchor. Sent again with the same id it
 * draws nothing and answers as the first time.
 */
export function makeAcceptance(database: Db, request: MakeAcceptanceRequest): Promise<MakeAcceptanceResult> {
  const { input, now, personId } = request;
  const { seriesId } = input;
  return writeTx(database, async (tx): Promise<MakeAcceptanceResult> => {
    const known = await tx.pullSeries.findUnique({ where: { id: seriesId }, select: { id: true } });
    if (known !== null) return { ok: true, seriesId };
    const head = await findBatchHead(tx, input.batchId);
    if (head === null) return refusal('no-batch', 'This batch is not there any more.');
    const anchor = await tx.anchor.findFirst({
      where: { id: input.anchorId, revisionId: head.revisionId },
      include: { revision: { select: { woodMaterialId: true } } },
    });
    if (anchor === null) return refusal('no-anchor', 'Choose an anchor of this batch.', 'anchorId');
    if (anchor.embedmentMm === null) return refusal('no-depth', 'The model gives no embedment for it.', 'anchorId');
    const { state } = await foldedBatch(tx, head);
    const joints = state.pieces.flatMap((piece): SetJoint[] => {
      if (piece.scrapped !== null) return [];
      const set = piece.operations
        .flatMap((operation) => operation.joints)
        .find(({ anchorId }) => anchorId === anchor.id);
      return set?.set == null ? [] : [{ piece: piece.number, mixId: set.set.mixId, setAt: set.set.at }];
    });
    if (joints.length === 0) return refusal('no-joints', 'No piece of this batch has it set yet.', 'anchorId');
    const plan: PullPlan = {
      depthsMm: [anchor.embedmentMm],
      factor: 'none',
      conditions: [
        {
          name: anchor.name,
          woodMaterialId: anchor.revision.woodMaterialId,
          adhesiveMaterialId: anchor.adhesiveMaterialId,
          wireMaterialId: anchor.wireMaterialId,
          wireDiameterMm: anchor.wireDiameterMm ?? 1,
          bitDiameterMm: anchor.bitDiameterMm ?? 2,
        },
      ],
      mixes: new Set(joints.map(({ mixId }) => mixId)).size,
      seed: input.seed,
      order: 'all',
      question: 'anchorage',
      goal: { demandN: input.demand, stepMm: request.stepMm, content: 0.95, confidence: 0.75 },
      board: null,
    };
    await tx.pullSeries.create({
      data: {
        id: seriesId,
        name: `Batch ${head.number}: ${anchor.name}`,
        kind: 'acceptance',
        plan: json(plan),
        batchId: head.id,
        status: 'open',
        note: '',
        createdAt: new Date(now),
      },
    });
    const mixes = state.mixes.filter(({ mixId }) => joints.some((joint) => joint.mixId === mixId));
    for (const [position, mix] of mixes.entries()) {
      await tx.pullMix.create({
        data: {
          id: `${seriesId}-${mix.number}`,
          seriesId,
          name: String(mix.number),
          position,
          adhesiveMaterialId: mix.materialId,
          adhesiveLotCode: '',
          sheet: json(mix.sheet),
          mixedAt: new Date(mix.mixedAt),
          setAt: null,
          note: '',
          batchMixId: mix.mixId,
        },
      });
    }
    const numbers = new Map(mixes.map(({ mixId, number }) => [mixId, number]));
    const drawn = drawnJoints(joints, input.perMix, input.seed);
    await insertSpecimens(tx, request, head.id, anchor, drawn, numbers);
    await appendPullChange(tx, seriesId, { kind: 'series-made', at: now, personId, after: plan });
    return { ok: true, seriesId };
  });
}

/** So many joints of every mix, and the order to pull them in, both from the seed. */
function drawnJoints(joints: readonly SetJoint[], perMix: number, seed: string): SetJoint[] {
  const byPiece = new Map(joints.map((joint) => [String(joint.piece), joint]));
  const order = seededOrder([...byPiece.keys()], seed, sha256).flatMap((piece) => byPiece.get(piece) ?? []);
  const taken = new Map<string, number>();
  return order.filter(({ mixId }) => {
    const before = taken.get(mixId) ?? 0;
    taken.set(mixId, before + 1);
    return before < perMix;
  });
}

async function insertSpecimens(
  tx: Tx,
  { input: { seriesId } }: MakeAcceptanceRequest,
  batchId: string,
  anchor: { readonly id: string; readonly name: string; readonly embedmentMm: number | null },
  drawn: readonly SetJoint[],
  numbers: ReadonlyMap<string, number>,
): Promise<void> {
  const pieces = await tx.piece.findMany({
    where: { batchId, number: { in: drawn.map(({ piece }) => piece) } },
    select: { id: true, number: true },
  });
  const pieceIds = new Map(pieces.map(({ id, number }) => [number, id]));
  await tx.pullSpecimen.createMany({
    data: drawn.map(({ piece, mixId, setAt }, index) => ({
      seriesId,
      code: `Piece ${piece}`,
      mixId: `${seriesId}-${numbers.get(mixId)}`,
      condition: anchor.name,
      depthMm: anchor.embedmentMm ?? 0,
      pullOrder: index + 1,
      pieceId: pieceIds.get(piece) ?? null,
      anchorId: anchor.id,
      setAt: new Date(setAt),
    })),
  });
}

function refusal(
  code: Extract<MakeAcceptanceResult, { ok: false }>['code'],
  message: string,
  field?: string,
): MakeAcceptanceResult {
  return { ok: false, code, message, ...(field === undefined ? {} : { field }) };
}
