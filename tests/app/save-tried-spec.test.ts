import { expect, test } from 'vitest';
import { makeModel } from '@/app/_commands/make-model';
import { saveRevisionAnchors } from '@/app/_commands/save-revision-anchors';
import { saveTriedSpec } from '@/app/_commands/save-tried-spec';
import type { AnchorsInput } from '@/lib/contracts/anchor-forms';
import type { TriedSpecInput } from '@/lib/contracts/tried-spec';
import { holePlace } from '@/lib/geometry/drilled-hole';
import type { Db } from '@/prisma/client';
import { findModel } from '@/prisma/data/models';
import { findRevision, type Revision } from '@/prisma/data/revisions';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);

function anchor(name: string, x: number): AnchorsInput['anchors'][number] {
  return {
    id: null,
    name,
    role: 'belly-hanger',
    kind: 'twisted-wire',
    face: 'belly',
    x,
    z: null,
    angle: 90,
    leansTo: null,
    loadAngle: 30,
    wireMaterialId: null,
    wireDiameter: 1,
    twist: 7,
    eyeInside: 5,
    eye: true,
    bitDiameter: 2,
    drillDepth: 12,
    embedment: 11,
    adhesiveMaterialId: null,
    hookMaterialId: null,
    splitRingMaterialId: null,
  };
}

/** A draft of 75 mm with two belly hangers. */
async function draftOf(db: Db, name: string): Promise<Revision> {
  const made = await makeModel(db, { name, woodMaterialId: null, length: 75, note: '' }, NOW);
  if (!made.ok) throw new Error(made.message);
  const head = (await findModel(db, made.modelId))?.revisions[0];
  const draft = await again(db, head?.id ?? '');
  const input = { seenAt: draft.updatedAt, anchors: [anchor('Front', 20), anchor('Rear', 50)] };
  expect(await saveRevisionAnchors(db, draft.id, input, NOW)).toEqual({ ok: true });
  return again(db, draft.id);
}

async function again(db: Db, revisionId: string): Promise<Revision> {
  const revision = await findRevision(db, revisionId);
  if (revision === null) throw new Error('no revision');
  return revision;
}

const tried = (draft: Revision, set: TriedSpecInput['anchors'][number]['set']): TriedSpecInput => ({
  seenAt: draft.updatedAt,
  anchors: [{ anchorId: draft.anchors[0]?.id ?? '', set }],
  bill: [],
});

describeBothDatabases('what was tried out', (makeDb) => {
  test('is kept on its anchor, and everything else stays as it was', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Kept');
    const set = { slantDeg: -18, embedmentMm: 14, drillDepthMm: 15, loadAngleDeg: 40 };
    expect(await saveTriedSpec(db, draft.id, tried(draft, set), NOW)).toEqual({ ok: true });
    const saved = await again(db, draft.id);
    const [front, rear] = saved.anchors;
    expect(front).toMatchObject({ id: draft.anchors[0]?.id, embedmentMm: 14, drillDepthMm: 15, leansTo: 'nose' });
    expect(front === undefined ? null : holePlace(front)).toMatchObject({ xMm: 20, slantDeg: -18 });
    expect(front).toMatchObject({ wireDiameterMm: 1, twistPitchMm: 7, eyeInsideMm: 5, isEyeClosed: true });
    expect(rear).toEqual(draft.anchors[1]);
  });

  test('with line and bill goes in together', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Together');
    const at = new Date(NOW);
    const material = { name: 'Hook of a bill', note: '', sheetRevision: '', createdAt: at, updatedAt: at };
    const { id: materialId } = await db.material.create({ data: { ...material, kind: 'hook' } });
    const input: TriedSpecInput = {
      ...tried(draft, { xMm: 22 }),
      line: { labelN: 45, type: 'mono' },
      bill: [{ materialId, quantity: 2, quantityUnit: 'pieces' }],
    };
    expect(await saveTriedSpec(db, draft.id, input, NOW)).toEqual({ ok: true });
    const saved = await again(db, draft.id);
    expect(saved).toMatchObject({ lineLabelN: 45, lineType: 'mono' });
    expect(saved.billLines).toMatchObject([{ material: { id: materialId }, quantity: 2, quantityUnit: 'pieces' }]);
  });

  test('that cannot be made is refused whole, and the next try is not in its way', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Refused');
    const line = { labelN: 45, type: 'mono' } as const;
    const refuse = (set: TriedSpecInput['anchors'][number]['set']) =>
      saveTriedSpec(db, draft.id, { ...tried(draft, set), line }, NOW);
    expect(await refuse({ embedmentMm: 20 })).toMatchObject({ code: 'deeper-than-drilled' });
    expect(await refuse({ bitDiameterMm: 0.5 })).toMatchObject({ code: 'bit-too-narrow' });
    expect(await refuse({ xMm: 80 })).toMatchObject({ code: 'past-tail' });
    expect(await refuse({ wireMaterialId: 'gone' })).toMatchObject({ code: 'no-material' });
    expect(await again(db, draft.id)).toEqual(draft);
    expect(await refuse({ xMm: 25 })).toEqual({ ok: true });
  });

  test('on a draft that changed meanwhile, or an anchor that is gone, is refused', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Meanwhile');
    const gone = { ...tried(draft, { xMm: 25 }), anchors: [{ anchorId: 'nobody', set: { xMm: 25 } }] };
    expect(await saveTriedSpec(db, draft.id, gone, NOW)).toMatchObject({ code: 'no-anchor' });
    expect(await saveTriedSpec(db, draft.id, tried(draft, { xMm: 25 }), NOW)).toEqual({ ok: true });
    expect(await saveTriedSpec(db, draft.id, tried(draft, { xMm: 26 }), NOW)).toMatchObject({
      code: 'changed-meanwhile',
    });
  });
});
