import type { TriedSpecInput } from '@/lib/contracts/tried-spec';
import type { SpecAnchor, SpecBillLine, SpecModel } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';

/** What of an anchor can be tried out. */
const TRIED = [
  'kind',
  'xMm',
  'zMm',
  'slantDeg',
  'loadAngleDeg',
  'wire',
  'wireDiameterMm',
  'twistPitchMm',
  'isEyeClosed',
  'bitDiameterMm',
  'drillDepthMm',
  'embedmentMm',
  'adhesive',
] as const satisfies readonly (keyof SpecAnchor)[];
type Tried = (typeof TRIED)[number];

/** Two figures nearer than this are the same: an angle goes through the database as its complement. */
const SAME = 1e-6;

/** Whether two values of a field are the same: figures to a millionth, materials by their identity. */
function isSame(a: SpecAnchor[Tried], b: SpecAnchor[Tried]): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) < SAME;
  const idOf = (value: SpecAnchor[Tried]) => (typeof value === 'object' && value !== null ? value.materialId : value);
  return idOf(a) === idOf(b);
}

/** The fields of an anchor that were tried out otherwise than they are saved. */
function changedFields(saved: SpecAnchor, tried: SpecAnchor): readonly Tried[] {
  return TRIED.filter((field) => !isSame(saved[field], tried[field]));
}

/** How many things differ from what is saved. */
export function changeCount(saved: SpecModel, tried: SpecModel): number {
  const anchors = pairs(saved, tried).reduce((count, [a, b]) => count + changedFields(a, b).length, 0);
  return (
    anchors +
    Number(isWoodChanged(saved, tried)) +
    Number(isLineChanged(saved, tried)) +
    changedBill(saved, tried).length
  );
}

function pairs(saved: SpecModel, tried: SpecModel): readonly (readonly [SpecAnchor, SpecAnchor])[] {
  return saved.anchors.flatMap((anchor) => {
    const other = tried.anchors.find(({ anchorId }) => anchorId === anchor.anchorId);
    return other === undefined ? [] : [[anchor, other] as const];
  });
}

function isWoodChanged(saved: SpecModel, tried: SpecModel): boolean {
  return saved.wood?.materialId !== tried.wood?.materialId;
}

function isLineChanged({ line: a }: SpecModel, { line: b }: SpecModel): boolean {
  return a?.labelN !== b?.labelN || a?.type !== b?.type;
}

function changedBill(saved: SpecModel, tried: SpecModel): readonly SpecBillLine[] {
  return (tried.bill ?? []).filter((line) => {
    const before = saved.bill?.find(({ materialId }) => materialId === line.materialId);
    return before?.quantity !== line.quantity || before.quantityUnit !== line.quantityUnit;
  });
}

/**
 * What was tried, on top of what is saved now: when the draft was saved meanwhile, here or elsewhere, nothing that was
 * tried is lost, and what was just saved is no change any more.
 */
export function rebased(before: SpecModel, tried: SpecModel, now: SpecModel): SpecModel {
  const anchors = now.anchors.map((anchor) => {
    const old = before.anchors.find(({ anchorId }) => anchorId === anchor.anchorId);
    const other = tried.anchors.find(({ anchorId }) => anchorId === anchor.anchorId);
    if (old === undefined || other === undefined) return anchor;
    return { ...anchor, ...Object.fromEntries(changedFields(old, other).map((field) => [field, other[field]])) };
  });
  const lines = changedBill(before, tried);
  const bill =
    lines.length === 0
      ? now.bill
      : [...(now.bill ?? []).filter((line) => lines.every((one) => one.materialId !== line.materialId)), ...lines];
  return {
    ...now,
    anchors,
    bill,
    wood: isWoodChanged(before, tried) ? tried.wood : now.wood,
    line: isLineChanged(before, tried) ? tried.line : now.line,
  };
}

/** Everything that was tried otherwise than it is saved, for the command that saves it. */
export function triedSpec(saved: SpecModel, tried: SpecModel, seenAt: Instant): TriedSpecInput {
  return {
    seenAt,
    anchors: pairs(saved, tried).flatMap(([before, now]) => {
      const fields = changedFields(before, now);
      return fields.length === 0 ? [] : [{ anchorId: before.anchorId, set: patchOf(now, fields) }];
    }),
    ...(isWoodChanged(saved, tried) && tried.wood !== null ? { woodMaterialId: tried.wood.materialId } : {}),
    ...(isLineChanged(saved, tried) && tried.line !== null
      ? { line: { labelN: tried.line.labelN, type: tried.line.type } }
      : {}),
    bill: [...changedBill(saved, tried)],
  };
}

function patchOf(anchor: SpecAnchor, fields: readonly Tried[]): TriedSpecInput['anchors'][number]['set'] {
  const { wire, adhesive, ...rest } = anchor;
  const plain = Object.fromEntries(
    fields.flatMap((field) => (field === 'wire' || field === 'adhesive' ? [] : [[field, rest[field]]])),
  );
  return {
    ...plain,
    ...(fields.includes('wire') ? { wireMaterialId: wire?.materialId ?? null } : {}),
    ...(fields.includes('adhesive') ? { adhesiveMaterialId: adhesive?.materialId ?? null } : {}),
  };
}
