import { describe, expect, test } from 'vitest';
import { labelPlaces } from '@/app/models/_plots/label-places';
import { dragged, nudged, withDepth } from '@/app/models/[modelId]/_tryout/edits';
import { readDegrees, readLength } from '@/app/models/[modelId]/_tryout/read-typed';
import { changeCount, rebased, triedSpec } from '@/app/models/[modelId]/_tryout/trial';
import { dragSteps } from '@/app/models/[modelId]/_tryout/tryout-world';
import { triedSpecSchema } from '@/lib/contracts/tried-spec';
import { bodyFromProfile } from '@/lib/geometry/body';
import { bodyShape } from '@/lib/geometry/body-shapes';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { inches } from '@/lib/units/force-and-length';

const stations = bodyShape('popper', { lengthMm: 70, heightMm: 22, widthMm: 20 });
const check = bodyFromProfile(stations, 70);
if (!check.ok) throw new Error(check.code);
const { body } = check;
const MM = dragSteps('mm', inches(1 / 16));
const INCH = dragSteps('inch', inches(1 / 16));

const BELLY: SpecAnchor = {
  anchorId: 'belly',
  name: 'Belly hanger',
  role: 'belly-hanger',
  kind: 'twisted-wire',
  face: 'belly',
  xMm: 30,
  zMm: null,
  slantDeg: 0,
  loadAngleDeg: 30,
  wire: { materialId: 'wire-a', name: 'Wire A', sheet: null },
  wireDiameterMm: 1.04,
  twistPitchMm: 7,
  eyeInsideMm: 5,
  isEyeClosed: true,
  bitDiameterMm: 2,
  drillDepthMm: 13,
  embedmentMm: 12,
  adhesive: { materialId: 'glue', name: 'Glue', sheet: null },
  screwEye: null,
  hook: null,
  splitRing: null,
};

const MODEL: SpecModel = {
  modelId: 'm',
  modelName: 'Popper',
  revisionId: 'r',
  revisionLetter: 'A',
  body: { stations, lengthMm: 70 },
  wood: { materialId: 'poplar', name: 'Poplar', sheet: null, weighedDensityKgM3: null, moisturePercent: null },
  anchors: [BELLY, { ...BELLY, anchorId: 'tail', name: 'Tail hanger', face: 'tail', xMm: null, zMm: 0 }],
  line: { labelN: 54, type: 'mono', knotShare: null, dragShare: null },
  fishMassG: null,
  bill: [{ materialId: 'wire-a', quantity: 200, quantityUnit: 'mm' }],
  waivers: [],
};

const withAnchor = (model: SpecModel, anchorId: string, set: Partial<SpecAnchor>): SpecModel => ({
  ...model,
  anchors: model.anchors.map((anchor) => (anchor.anchorId === anchorId ? { ...anchor, ...set } : anchor)),
});

describe('an anchor that is tried', () => {
  test('takes its hole along, slack and all', () => {
    expect(withDepth(BELLY, 15)).toMatchObject({ embedmentMm: 15, drillDepthMm: 16 });
    expect(withDepth({ ...BELLY, drillDepthMm: null }, 15)).toMatchObject({ embedmentMm: 15, drillDepthMm: null });
    // A hole that was too shallow for its shank comes out just deep enough.
    expect(withDepth({ ...BELLY, drillDepthMm: 10 }, 15)).toMatchObject({ embedmentMm: 15, drillDepthMm: 15 });
  });

  test('goes by sixteenths in an inch shop and half millimetres in the other', () => {
    expect(nudged(BELLY, body, 'shank', 'ArrowUp', MM).embedmentMm).toBe(12.5);
    expect(nudged({ ...BELLY, embedmentMm: inches(1 / 2) }, body, 'shank', 'ArrowUp', INCH).embedmentMm).toBeCloseTo(
      inches(9 / 16),
      12,
    );
    expect(nudged(BELLY, body, 'mouth', 'ArrowRight', MM).xMm).toBe(30.5);
    expect(nudged(BELLY, body, 'shank', 'ArrowLeft', MM).slantDeg).toBe(-1);
    expect(nudged(BELLY, body, 'load', 'ArrowUp', MM).loadAngleDeg).toBe(31);
    expect(nudged({ ...BELLY, loadAngleDeg: 0 }, body, 'load', 'ArrowDown', MM).loadAngleDeg).toBe(0);
    expect(nudged(BELLY, body, 'load', 'Enter', MM)).toBe(BELLY);
  });

  test('never goes deeper than its wood by dragging, however far the finger goes', () => {
    const far = dragged(BELLY, body, 'shank', { x: 30, z: 500 }, MM);
    expect(far.embedmentMm).toBeLessThanOrEqual(22);
    expect(far.embedmentMm).toBeGreaterThan(19);
  });

  test('without a place stays as it is', () => {
    const unplaced = { ...BELLY, slantDeg: null };
    expect(dragged(unplaced, body, 'mouth', { x: 10, z: 0 }, MM)).toBe(unplaced);
    expect(nudged(unplaced, body, 'shank', 'ArrowUp', MM)).toBe(unplaced);
  });

  test('a wire that runs through has no depth to drag', () => {
    const through: SpecAnchor = { ...BELLY, kind: 'through-wire', embedmentMm: null, drillDepthMm: null };
    expect(dragged(through, body, 'shank', { x: 30, z: 5 }, MM)).toBe(through);
  });
});

describe('what was tried and not saved', () => {
  const tried = withAnchor(MODEL, 'belly', { embedmentMm: 15, drillDepthMm: 16, slantDeg: -12 });

  test('is counted, and sent as nothing but what differs', () => {
    expect(changeCount(MODEL, MODEL)).toBe(0);
    expect(changeCount(MODEL, tried)).toBe(3);
    expect(triedSpec(MODEL, tried, 7)).toEqual({
      seenAt: 7,
      anchors: [{ anchorId: 'belly', set: { slantDeg: -12, drillDepthMm: 16, embedmentMm: 15 } }],
      bill: [],
    });
    expect(triedSpecSchema.safeParse(triedSpec(MODEL, tried, 7)).success).toBe(true);
  });

  test('of materials, line, wood and bill goes by what they are', () => {
    const other: SpecModel = {
      ...withAnchor(MODEL, 'tail', { kind: 'through-wire', adhesive: null, embedmentMm: null }),
      wood: { materialId: 'maple', name: 'Maple', sheet: null, weighedDensityKgM3: null, moisturePercent: null },
      line: { labelN: 45, type: 'mono', knotShare: null, dragShare: null },
      bill: [...(MODEL.bill ?? []), { materialId: 'hook', quantity: 2, quantityUnit: 'pieces' }],
    };
    const sent = triedSpec(MODEL, other, 7);
    expect(sent).toEqual({
      seenAt: 7,
      anchors: [{ anchorId: 'tail', set: { kind: 'through-wire', embedmentMm: null, adhesiveMaterialId: null } }],
      woodMaterialId: 'maple',
      line: { labelN: 45, type: 'mono' },
      bill: [{ materialId: 'hook', quantity: 2, quantityUnit: 'pieces' }],
    });
    expect(triedSpecSchema.safeParse(sent).success).toBe(true);
    expect(changeCount(MODEL, other)).toBe(6);
  });

  test('is no change any more once it was saved, through an angle kept as its complement too', () => {
    const saved = withAnchor(tried, 'belly', { slantDeg: -(90 - (90 - 12)) });
    expect(changeCount(saved, rebased(MODEL, tried, saved))).toBe(0);
  });

  test('stays on top of what somebody else saved meanwhile', () => {
    const theirs = withAnchor(MODEL, 'tail', { embedmentMm: 20 });
    const on = rebased(MODEL, tried, theirs);
    expect(on.anchors.map(({ embedmentMm }) => embedmentMm)).toEqual([15, 20]);
    expect(changeCount(theirs, on)).toBe(3);
    const gone = { ...MODEL, anchors: MODEL.anchors.slice(1) };
    expect(rebased(MODEL, tried, gone).anchors).toHaveLength(1);
  });
});

describe('what is typed', () => {
  test('is read as makers write it', () => {
    expect(readLength('5/8', 'inch', 0, 100)).toEqual({ ok: true, value: inches(5 / 8) });
    expect(readLength('12 mm', 'inch', 0, 100)).toEqual({ ok: true, value: 12 });
    expect(readLength('-3', 'mm', -10, 10)).toEqual({ ok: true, value: -3 });
    expect(readLength('\u22123', 'mm', -10, 10)).toEqual({ ok: true, value: -3 });
    expect(readDegrees('-12,5', -85, 85)).toEqual({ ok: true, value: -12.5 });
    expect(readDegrees('12.347', 0, 90)).toEqual({ ok: true, value: 12.35 });
  });

  test('and refused with what to write instead', () => {
    expect(readLength('deep', 'mm', 0, 100)).toMatchObject({ ok: false, need: expect.stringContaining('Write') });
    expect(readLength('400', 'mm', 0, 100)).toMatchObject({ ok: false });
    expect(readLength('-3', 'mm', 0, 100)).toMatchObject({ ok: false });
    expect(readDegrees('91', 0, 90)).toEqual({ ok: false, need: 'Write degrees from 0 to 90.' });
    expect(readDegrees('', 0, 90)).toMatchObject({ ok: false });
  });
});

describe('labels beside the ends of lines', () => {
  const room = { gap: 15, low: 0, high: 200 };

  test('stay where they are wanted when there is room', () => {
    expect(labelPlaces([10, 100, 180], room)).toEqual([10, 100, 180]);
  });

  test('make room for each other, keep their order, and stay in the plot', () => {
    expect(labelPlaces([100, 100, 101], room)).toEqual([100, 115, 130]);
    expect(labelPlaces([200, 199, 400], room)).toEqual([185, 170, 200]);
    const many = labelPlaces(
      Array.from({ length: 40 }, () => 50),
      room,
    );
    expect(Math.min(...many)).toBeGreaterThanOrEqual(-1e-9);
    expect(Math.max(...many)).toBeLessThanOrEqual(200 + 1e-9);
    expect([...many].sort((a, b) => a - b)).toEqual(many);
  });

  test('none', () => {
    expect(labelPlaces([], room)).toEqual([]);
  });
});
