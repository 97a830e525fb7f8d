import { expect, test } from 'vitest';
import { freezeRevision } from '@/app/_commands/freeze-revision';
import { makeModel } from '@/app/_commands/make-model';
import { reviseModel } from '@/app/_commands/revise-model';
import { saveModel } from '@/app/_commands/save-model';
import { saveRevisionAnchors } from '@/app/_commands/save-revision-anchors';
import { saveRevisionBill } from '@/app/_commands/save-revision-bill';
import { saveRevisionBody } from '@/app/_commands/save-revision-body';
import { saveRevisionRoute } from '@/app/_commands/save-revision-route';
import { setModelArchived } from '@/app/_commands/set-model-archived';
import type { AnchorsInput } from '@/lib/contracts/anchor-forms';
import type { BodyInput } from '@/lib/contracts/model-forms';
import type { RouteInput } from '@/lib/contracts/route-forms';
import type { Db } from '@/prisma/client';
import { findModel, listModelPage } from '@/prisma/data/models';
import { findRevision, type Revision } from '@/prisma/data/revisions';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);

/** The draft of a new model. */
async function draftOf(db: Db, name: string): Promise<Revision> {
  const made = await makeModel(db, { name, woodMaterialId: null, length: 75, note: '' }, NOW);
  if (!made.ok) throw new Error(made.message);
  return newest(db, made.modelId);
}

async function newest(db: Db, modelId: string): Promise<Revision> {
  const head = (await findModel(db, modelId))?.revisions[0];
  const revision = head === undefined ? null : await findRevision(db, head.id);
  if (revision === null) throw new Error('the model has no revision');
  return revision;
}

function anchor(id: string | null, name: string, x = 10): AnchorsInput['anchors'][number] {
  return {
    id,
    name,
    role: 'belly-hanger',
    kind: 'twisted-wire',
    face: 'belly',
    x,
    z: null,
    angle: 90,
    leansTo: null,
    loadAngle: null,
    wireMaterialId: null,
    wireDiameter: 1,
    twist: null,
    eyeInside: null,
    eye: null,
    bitDiameter: 2,
    drillDepth: 12,
    embedment: 11,
    adhesiveMaterialId: null,
    hookMaterialId: null,
    splitRingMaterialId: null,
  };
}

function bodyOf(seenAt: number): BodyInput {
  return {
    seenAt,
    woodMaterialId: null,
    length: 75,
    weighedDensity: null,
    moisture: null,
    lineLabel: null,
    lineType: null,
    knotShare: null,
    dragShare: null,
    fishMass: null,
    ballast: [],
    note: '',
    stations: [],
  };
}

type Operation = RouteInput['operations'][number];

function operation(ref: string, more: Partial<Operation> = {}): Operation {
  return {
    ref,
    name: `Step ${ref}`,
    kind: 'work',
    minutes: 2,
    materialId: null,
    anchorIds: [],
    caution: 'none',
    needs: [],
    ...more,
  };
}

async function addGlue(db: Db): Promise<string> {
  const at = new Date(NOW);
  const { id } = await db.material.create({
    data: { kind: 'adhesive', name: 'Glue', sheetRevision: '', note: '', createdAt: at, updatedAt: at },
  });
  return id;
}

/** A draft with two anchors and a route whose glue-up sets the second one only. */
async function filledDraft(db: Db): Promise<Revision> {
  const glue = await addGlue(db);
  const empty = await draftOf(db, 'Popper');
  const anchors = [anchor(null, 'Nose', 0), anchor(null, 'Belly', 30)];
  await saveRevisionAnchors(db, empty.id, { seenAt: empty.updatedAt, anchors }, NOW);
  const withAnchors = await newest(db, empty.modelId);
  const belly = withAnchors.anchors[1]?.id ?? '';
  const operations = [
    operation('new-1'),
    operation('new-2', {
      kind: 'glue',
      materialId: glue,
      anchorIds: [belly],
      needs: [{ after: 'new-1', wait: 'done' }],
    }),
    operation('new-3', { needs: [{ after: 'new-2', wait: 'sand' }] }),
  ];
  const result = await saveRevisionRoute(db, empty.id, { seenAt: withAnchors.updatedAt, operations }, NOW);
  expect(result).toEqual({ ok: true });
  return newest(db, empty.modelId);
}

describeBothDatabases('models', (makeDb) => {
  test('a new model begins with the draft A', async () => {
    const db = await makeDb();
    const revision = await draftOf(db, 'Minnow');
    expect(revision).toMatchObject({ letter: 'A', frozenAt: null, lengthMm: 75, profile: [], anchors: [] });
  });

  test('two models do not share a name, in whatever case', async () => {
    const db = await makeDb();
    const { modelId } = await draftOf(db, 'Minnow');
    const again = { name: 'MINNOW', woodMaterialId: null, length: 75, note: '' };
    expect(await makeModel(db, again, NOW)).toMatchObject({ ok: false, code: 'name-taken', field: 'name' });
    await draftOf(db, 'Popper');
    expect(await saveModel(db, modelId, { name: 'popper', note: '' })).toMatchObject({ code: 'name-taken' });
    expect(await saveModel(db, modelId, { name: 'minnow', note: 'smaller' })).toEqual({ ok: true });
  });

  test('heights and widths come whole and are kept as halves', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Minnow');
    const stations = [
      { x: 0, height: 4, width: 3 },
      { x: 75, height: 2, width: 1 },
    ];
    const body = { ...bodyOf(draft.updatedAt), lineLabel: 54, stations };
    expect(await saveRevisionBody(db, draft.id, body, NOW)).toEqual({ ok: true });
    const saved = await newest(db, draft.modelId);
    expect(saved.profile).toEqual([
      { xMm: 0, halfHeightMm: 2, halfWidthMm: 1.5 },
      { xMm: 75, halfHeightMm: 1, halfWidthMm: 0.5 },
    ]);
    expect(saved.lineLabelN).toBe(54);
  });

  test('what is known of line, wood and ballast is kept, and no ballast is not the same as nobody has said', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Minnow');
    expect(draft.ballast).toBeNull();
    const lead = { name: 'belly', metal: 'lead', massG: 3.5, xMm: 30, zMm: -4, isInside: true } as const;
    const known = { lineType: 'braid', knotShare: 0.8, dragShare: 0.3, fishMass: 2000, moisture: 10 } as const;
    const body = { ...bodyOf(draft.updatedAt), ...known, weighedDensity: 480, ballast: [lead] };
    expect(await saveRevisionBody(db, draft.id, body, NOW)).toEqual({ ok: true });
    const saved = await newest(db, draft.modelId);
    expect(saved).toMatchObject({
      lineType: 'braid',
      knotShare: 0.8,
      dragShare: 0.3,
      fishMassG: 2000,
      moisturePercent: 10,
      weighedDensityKgM3: 480,
      ballast: [lead],
    });
    await saveRevisionBody(db, draft.id, { ...bodyOf(saved.updatedAt), hasNoBallast: 'on' }, NOW);
    const none = await newest(db, draft.modelId);
    expect(none.ballast).toEqual([]);
    await saveRevisionBody(db, draft.id, bodyOf(none.updatedAt), NOW);
    expect((await newest(db, draft.modelId)).ballast).toBeNull();
  });

  test('a form that was overtaken by somebody else is refused and changes nothing', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Minnow');
    const mine = { seenAt: draft.updatedAt, anchors: [anchor(null, 'Mine')] };
    const theirs = { seenAt: draft.updatedAt, anchors: [anchor(null, 'Theirs')] };
    expect(await saveRevisionAnchors(db, draft.id, theirs, NOW)).toEqual({ ok: true });
    expect(await saveRevisionAnchors(db, draft.id, mine, NOW)).toMatchObject({ code: 'changed-meanwhile' });
    expect((await newest(db, draft.modelId)).anchors.map((row) => row.name)).toEqual(['Theirs']);
  });

  test('an anchor behind the tail is refused beside its field', async () => {
    const db = await makeDb();
    const draft = await draftOf(db, 'Minnow');
    const input = { seenAt: draft.updatedAt, anchors: [anchor(null, 'Nose', 0), anchor(null, 'Far', 76)] };
    expect(await saveRevisionAnchors(db, draft.id, input, NOW)).toMatchObject({ field: 'anchors.1.x' });
  });

  test('a moved anchor keeps its id, and the glue-up that sets it follows', async () => {
    const db = await makeDb();
    const draft = await filledDraft(db);
    const [nose, belly] = draft.anchors;
    const anchors = [anchor(belly?.id ?? null, 'Belly', 30), anchor(nose?.id ?? null, 'Nose', 0), anchor(null, 'Tail')];
    expect(await saveRevisionAnchors(db, draft.id, { seenAt: draft.updatedAt, anchors }, NOW)).toEqual({ ok: true });
    const moved = await newest(db, draft.modelId);
    expect(moved.anchors.map((row) => row.id).slice(0, 2)).toEqual([belly?.id, nose?.id]);
    expect(moved.operations[1]?.anchorPositions).toEqual([1]);
  });

  test('taking away the only anchors of a glue-up is refused, since it would then set all', async () => {
    const db = await makeDb();
    const draft = await filledDraft(db);
    const anchors = [anchor(draft.anchors[0]?.id ?? null, 'Nose', 0)];
    const result = await saveRevisionAnchors(db, draft.id, { seenAt: draft.updatedAt, anchors }, NOW);
    expect(result).toMatchObject({ ok: false, code: 'glue-up-emptied' });
    expect((await newest(db, draft.modelId)).anchors).toHaveLength(2);
  });

  test('a route keeps the ids of its steps when one is put in between', async () => {
    const db = await makeDb();
    const draft = await filledDraft(db);
    const ids = draft.operations.map((row) => row.id);
    const [first = '', second = '', third = ''] = ids;
    const glue = draft.operations[1]?.material?.id ?? null;
    const operations = [
      operation(first),
      operation('new-1', { name: 'Dry fit', needs: [{ after: first, wait: 'done' }] }),
      operation(second, { kind: 'glue', materialId: glue, needs: [{ after: 'new-1', wait: 'done' }] }),
      operation(third, { needs: [{ after: second, wait: 'handle' }] }),
    ];
    const result = await saveRevisionRoute(db, draft.id, { seenAt: draft.updatedAt, operations }, NOW);
    expect(result).toEqual({ ok: true });
    const saved = (await newest(db, draft.modelId)).operations;
    expect([saved[0]?.id, saved[2]?.id, saved[3]?.id]).toEqual(ids);
    expect(saved[2]?.needs).toEqual([{ operationId: saved[1]?.id, wait: 'done' }]);
    expect(saved[2]?.anchorPositions).toEqual([]);
    expect(saved[3]?.needs).toEqual([{ operationId: second, wait: 'handle' }]);
  });

  test('a bill keeps its order and refuses a material that is gone', async () => {
    const db = await makeDb();
    const glue = await addGlue(db);
    const draft = await draftOf(db, 'Minnow');
    const line = { materialId: glue, unit: 'g', quantity: 0.6, note: '' } as const;
    const lost = { seenAt: draft.updatedAt, lines: [{ ...line, materialId: 'gone' }] };
    expect(await saveRevisionBill(db, draft.id, lost, NOW)).toMatchObject({ code: 'no-material' });
    const lines = [
      { ...line, note: 'first' },
      { ...line, note: 'second' },
    ];
    const seenAt = (await newest(db, draft.modelId)).updatedAt;
    expect(await saveRevisionBill(db, draft.id, { seenAt, lines }, NOW)).toEqual({ ok: true });
    expect((await newest(db, draft.modelId)).billLines.map((row) => row.note)).toEqual(['first', 'second']);
  });

  test('a frozen revision is never changed', async () => {
    const db = await makeDb();
    const draft = await filledDraft(db);
    expect(await freezeRevision(db, draft.id, draft.updatedAt, NOW)).toEqual({ ok: true });
    const frozen = await newest(db, draft.modelId);
    const seenAt = frozen.updatedAt;
    const body = { ...bodyOf(seenAt), length: 80 };
    const results = [
      await saveRevisionBody(db, draft.id, body, NOW),
      await saveRevisionAnchors(db, draft.id, { seenAt, anchors: [] }, NOW),
      await saveRevisionRoute(db, draft.id, { seenAt, operations: [] }, NOW),
      await saveRevisionBill(db, draft.id, { seenAt, lines: [] }, NOW),
      await freezeRevision(db, draft.id, seenAt, NOW),
    ];
    for (const result of results) expect(result).toMatchObject({ ok: false, code: 'frozen' });
    expect(await newest(db, draft.modelId)).toEqual(frozen);
  });

  test('the next revision is a copy under the next letter, and only a frozen one has a next', async () => {
    const db = await makeDb();
    const draft = await filledDraft(db);
    expect(await reviseModel(db, draft.modelId, NOW)).toMatchObject({ ok: false, code: 'draft-open' });
    await freezeRevision(db, draft.id, draft.updatedAt, NOW);
    const frozen = await newest(db, draft.modelId);
    expect(await reviseModel(db, draft.modelId, NOW)).toMatchObject({ ok: true, letter: 'B' });
    const next = await newest(db, draft.modelId);
    expect(next).toMatchObject({ letter: 'B', frozenAt: null, lengthMm: 75 });
    expect(next.anchors.map((row) => row.name)).toEqual(['Nose', 'Belly']);
    expect(next.operations.map((row) => row.name)).toEqual(frozen.operations.map((row) => row.name));
    expect(next.operations[2]?.needs).toEqual([{ operationId: next.operations[1]?.id, wait: 'sand' }]);
    const old = new Set([...frozen.anchors, ...frozen.operations].map((row) => row.id));
    expect([...next.anchors, ...next.operations].some((row) => old.has(row.id))).toBe(false);
    expect(await findRevision(db, draft.id)).toEqual(frozen);
  });

  test('the list is by name, searched in whatever case, in pages, without the archived', async () => {
    const db = await makeDb();
    for (const name of ['Minnow 10', 'Minnow 2', 'Popper', 'Ärla']) await draftOf(db, name);
    const { modelId } = await draftOf(db, 'Old minnow');
    await setModelArchived(db, modelId, true);
    const search = { text: 'MINN', isArchived: false, page: 0, pageSize: 50 };
    const names = async (more: Partial<typeof search>) => {
      const { lines, total } = await listModelPage(db, { ...search, ...more });
      return [total, ...lines.map((line) => line.name)];
    };
    expect(await names({})).toEqual([2, 'Minnow 2', 'Minnow 10']);
    expect(await names({ isArchived: true })).toEqual([1, 'Old minnow']);
    expect(await names({ text: '', page: 1, pageSize: 3 })).toEqual([4, 'Popper']);
    expect(await names({ text: 'är' })).toEqual([1, 'Ärla']);
  });
});
