import type { NewPullSeriesInput } from '@/lib/contracts/pull-forms';
import { type DesignRefusal, pullDesign } from '@/lib/pulltest/pull-design';
import { designOfPlan, layoutOfPlan, type PlanCondition, type PullPlan } from '@/lib/pulltest/pull-plan';
import type { Instant } from '@/lib/units/instant';
import { type Db, type Tx, writeTx } from '@/prisma/client';
import { findSheetMaterial } from '@/prisma/data/mix-materials';
import { appendPullChange, json } from '@/prisma/data/pull-series';
import { sha256 } from '../_server/digest';
import type { Refusal } from './command-result';

export interface MakePullSeriesRequest {
  readonly input: NewPullSeriesInput;
  /** The shop's step of depths, mm. */
  readonly stepMm: number;
  readonly personId: string | null;
  readonly now: Instant;
}

export type MakePullSeriesResult =
  | { readonly ok: true; readonly seriesId: string }
  | Refusal<'no-material' | 'same-material-twice' | 'no-others' | 'key-reused' | 'bad-board' | DesignRefusal>;

/**
 * Makes a series: its plan, its specimens in the order of pulling that the seed gives, and its mixes. Sent again with
 * the same id it makes nothing and answers as the first time.
 */
export function makePullSeries(database: Db, request: MakePullSeriesRequest): Promise<MakePullSeriesResult> {
  const { input, now } = request;
  return writeTx(database, async (tx): Promise<MakePullSeriesResult> => {
    const known = await tx.pullSeries.findUnique({ where: { id: input.seriesId }, select: { name: true } });
    if (known !== null) {
      if (known.name === input.name) return { ok: true, seriesId: input.seriesId };
      return refusal('key-reused', 'This form was sent before with other values. Open the form anew.');
    }
    const conditions = await conditionsOf(tx, input);
    if ('ok' in conditions) return conditions;
    const plan = planOf(request, conditions);
    const design = pullDesign(designOfPlan(plan), sha256);
    if (!design.ok) return designRefusal(design.code);
    const board = layoutOfPlan(plan, design.specimens, sha256);
    if (board !== null && !board.ok) return boardRefusal(board.code, 'leastMm' in board ? board.leastMm : null);
    await tx.pullSeries.create({
      data: {
        id: input.seriesId,
        name: input.name,
        kind: 'design',
        plan: json(plan),
        status: 'open',
        note: input.note,
        createdAt: new Date(now),
      },
    });
    const glueOf = new Map(conditions.map(({ name, adhesiveMaterialId }) => [name, adhesiveMaterialId]));
    for (const [position, name] of design.mixes.entries()) {
      const first = design.specimens.find(({ mix }) => mix === name);
      const adhesiveMaterialId = glueOf.get(first?.condition ?? '') ?? null;
      const sheet =
        adhesiveMaterialId === null ? null : ((await findSheetMaterial(tx, adhesiveMaterialId))?.sheet ?? null);
      await tx.pullMix.create({
        data: {
          id: mixId(input.seriesId, name),
          seriesId: input.seriesId,
          name,
          position,
          adhesiveMaterialId,
          adhesiveLotCode: '',
          note: '',
          ...(sheet === null ? {} : { sheet: json(sheet) }),
        },
      });
    }
    await tx.pullSpecimen.createMany({
      data: design.specimens.map(({ id, mix, condition, depthMm, pullOrder }) => ({
        seriesId: input.seriesId,
        code: id,
        mixId: mixId(input.seriesId, mix),
        condition,
        depthMm,
        pullOrder,
      })),
    });
    await appendPullChange(tx, input.seriesId, {
      kind: 'series-made',
      at: now,
      personId: request.personId,
      after: plan,
    });
    return { ok: true, seriesId: input.seriesId };
  });
}

function mixId(seriesId: string, name: string): string {
  return `${seriesId}-${name}`;
}

function planOf({ input, stepMm }: MakePullSeriesRequest, conditions: readonly PlanCondition[]): PullPlan {
  return {
    depthsMm: input.depths,
    factor: input.factor,
    conditions,
    mixes: input.mixes,
    seed: input.seed,
    order: input.order,
    question: input.question,
    // EN 14358 and ASTM D2915 take the 5th percentile with 75 % confidence.
    goal: { demandN: input.demand, stepMm, content: 0.95, confidence: 0.75 },
    board: input.hasBoard
      ? {
          lengthMm: input.boardLength,
          widthMm: input.boardWidth,
          thicknessMm: input.boardThickness,
          edgeMm: input.boardEdge,
          spacingMm: input.boardSpacing,
        }
      : null,
  };
}

/** The conditions that the form asks for: the first from its three materials, the others with one of them exchanged. */
async function conditionsOf(
  tx: Tx,
  input: NewPullSeriesInput,
): Promise<readonly PlanCondition[] | Extract<MakePullSeriesResult, { ok: false }>> {
  const { factor, woodMaterialId, adhesiveMaterialId, wireMaterialId } = input;
  const base = { woodMaterialId, adhesiveMaterialId, wireMaterialId };
  const ids = [woodMaterialId, adhesiveMaterialId, wireMaterialId, ...input.others].flatMap((id) => id ?? []);
  const materials = await tx.material.findMany({
    where: { id: { in: ids } },
    select: { id: true, name: true, kind: true },
  });
  const named = new Map(materials.map((material) => [material.id, material]));
  for (const [field, kind] of [
    ['woodMaterialId', 'wood'],
    ['adhesiveMaterialId', 'adhesive'],
    ['wireMaterialId', 'wire'],
  ] as const) {
    const id = input[field];
    if (id !== null && named.get(id)?.kind !== kind) {
      return refusal('no-material', 'This material is not in Stock any more. Choose another.', field);
    }
  }
  const sizes = { wireDiameterMm: input.wireDiameter, bitDiameterMm: input.bitDiameter };
  const nameOf = (id: string | null) => (id === null ? '' : (named.get(id)?.name ?? ''));
  if (factor === 'none') {
    const name = [woodMaterialId, adhesiveMaterialId, wireMaterialId].map(nameOf).filter(Boolean).join(', ');
    return [{ name: name.slice(0, 200) || 'Specimens', ...base, ...sizes }];
  }
  const column = `${factor}MaterialId` as const;
  const first = base[column];
  if (first === null) return refusal('no-material', 'Choose the first of those to be compared.', column);
  const others = input.others.filter((id) => named.get(id)?.kind === factor);
  if (others.length === 0) return refusal('no-others', 'Tick at least one other to compare with.', 'others');
  if (new Set([first, ...others]).size !== others.length + 1) {
    return refusal('same-material-twice', 'The first is compared with itself. Untick it here.', 'others');
  }
  return [first, ...others].map((id) => ({ name: nameOf(id), ...base, [column]: id, ...sizes }));
}

type Code = Extract<MakePullSeriesResult, { ok: false }>['code'];

function refusal(code: Code, message: string, field?: string): Extract<MakePullSeriesResult, { ok: false }> {
  return { ok: false, code, message, ...(field === undefined ? {} : { field }) };
}

function designRefusal(code: DesignRefusal) {
  switch (code) {
    case 'no-depths':
    case 'bad-depth':
      return refusal(code, 'Write at least one depth above zero.', 'depths');
    case 'same-depth-twice':
      return refusal(code, 'A depth stands twice.', 'depths');
    case 'no-condition':
      return refusal(code, 'Two of those compared have the same name.', 'others');
    case 'bad-mixes':
      return refusal(code, 'Write a whole number of mixes.', 'mixes');
    case 'too-many':
      return refusal(code, 'That is more than 500 specimens. Take fewer depths, mixes or materials.', 'mixes');
  }
}

function boardRefusal(code: string, leastMm: number | null) {
  const least = leastMm === null ? '' : ` At least ${Math.ceil(leastMm * 10) / 10} mm.`;
  switch (code) {
    case 'edge-too-near':
      return refusal('bad-board', `So near to the edge the wood splits early.${least}`, 'boardEdge');
    case 'spacing-too-near':
      return refusal('bad-board', `So near to each other the holes weaken one another.${least}`, 'boardSpacing');
    case 'board-too-thin':
      return refusal('bad-board', `The deepest hole goes through.${least}`, 'boardThickness');
    default:
      return refusal('bad-board', 'The board is too small for one hole with its distance to the edges.', 'boardLength');
  }
}
