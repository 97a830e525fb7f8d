import { expect, it } from 'vitest';
import { reviseModel } from '@/app/_commands/revise-model';
import { saveBatchPlanning, savePersonSkills, saveRoutePlanning } from '@/app/_commands/save-planning';
import { addResourceChange, removeResource, removeResourceChange, saveResource } from '@/app/_commands/save-resource';
import { saveRevisionRoute } from '@/app/_commands/save-revision-route';
import { routePlanningFormSchema } from '@/lib/contracts/planning-forms';
import { resourceFormSchema } from '@/lib/contracts/resource-forms';
import type { Db } from '@/prisma/client';
import { listOperationPlanning } from '@/prisma/data/operation-planning';
import { listPeopleWithSkills } from '@/prisma/data/people';
import { findResource, listResources } from '@/prisma/data/resources';
import { findRevision } from '@/prisma/data/revisions';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop } from './test-workshop';

const ROTATOR = { name: 'Rotator', kind: 'rotator', capacity: 24, openFrom: null, openTo: null } as const;

const planningRow = (operationId: string, changes: object = {}) =>
  routePlanningFormSchema.parse({
    operations: [
      {
        operationId,
        setUpMinutes: '10',
        by: 'skill:painting',
        leastPieceMinutes: '',
        mostPieces: '12',
        resourceId: '',
        resourceShare: 'piece',
        holdsUntil: 'handle',
        remedyMinutes: '3',
        spoiltPercent: '4',
        ...changes,
      },
    ],
  });

async function rotator(db: Db): Promise<string> {
  const made = await saveResource(db, null, ROTATOR, EVENING);
  if (!made.ok) throw new Error(made.message);
  return made.resourceId;
}

it('a resource that opens is also told when it closes', () => {
  const form = { name: 'Booth', kind: 'booth', capacity: '1', openFrom: '08:00', openTo: '' };
  expect(resourceFormSchema.safeParse(form).error?.issues).toMatchObject([{ path: ['openTo'] }]);
  expect(resourceFormSchema.safeParse({ ...form, openTo: '07:00' }).error?.issues).toMatchObject([
    { path: ['openTo'] },
  ]);
  expect(resourceFormSchema.parse({ ...form, openTo: '18:00' })).toMatchObject({ openFrom: 480, openTo: 1080 });
});

describeBothDatabases('what the plan is told', (makeDb) => {
  it('places: named once, changed, with days that differ, and removed with what hung on them', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const id = await rotator(db);
    expect(await saveResource(db, null, { ...ROTATOR, name: 'ROTATOR' }, EVENING)).toMatchObject({
      code: 'name-taken',
    });
    expect(await saveResource(db, id, { ...ROTATOR, capacity: 12 }, EVENING)).toEqual({ ok: true, resourceId: id });
    expect(await saveResource(db, 'gone', ROTATOR, EVENING)).toMatchObject({ ok: false });
    const days = { fromOn: '2026-03-12', toOn: '2026-03-14', capacity: 0, reason: 'belt' };
    expect(await addResourceChange(db, id, days)).toEqual({ ok: true });
    expect(await addResourceChange(db, 'gone', days)).toMatchObject({ code: 'no-resource' });
    const found = await findResource(db, id);
    expect(found).toMatchObject({ capacity: 12, changes: [days] });
    await removeResourceChange(db, found?.changes[0]?.id ?? '');
    await saveRoutePlanning(db, 'rev', planningRow('rev-coat-1', { resourceId: id }));
    await removeResource(db, id);
    expect(await listResources(db)).toEqual([]);
    expect((await listOperationPlanning(db, ['rev'])).get('rev-coat-1')).toMatchObject({ resourceId: null });
  });

  it('planning of a step stays with it through a change of the route and goes into the next revision', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const missing = await saveRoutePlanning(db, 'rev', planningRow('rev-coat-1', { resourceId: 'gone' }));
    expect(missing).toMatchObject({ code: 'no-resource', field: 'operations.0.resourceId' });
    expect(await saveRoutePlanning(db, 'rev', planningRow('other'))).toMatchObject({ code: 'no-operation' });
    expect(await saveRoutePlanning(db, 'rev', planningRow('rev-coat-1'))).toEqual({ ok: true });
    const revision = await findRevision(db, 'rev');
    const operations = (revision?.operations ?? []).map((operation) => ({
      ref: operation.id,
      name: operation.name,
      kind: operation.kind,
      minutes: operation.attendedMinutes,
      materialId: operation.material?.id ?? null,
      anchorIds: [],
      caution: operation.caution,
      needs: operation.needs.map(({ operationId, wait }) => ({ after: operationId, wait })),
    }));
    const saved = await saveRevisionRoute(db, 'rev', { seenAt: revision?.updatedAt ?? 0, operations }, EVENING);
    expect(saved).toEqual({ ok: true });
    const said = {
      setUpMinutes: 10,
      skill: 'painting',
      personId: null,
      mostPieces: 12,
      remedyMinutes: 3,
      spoiltPercent: 4,
    };
    expect((await listOperationPlanning(db, ['rev'])).get('rev-coat-1')).toMatchObject(said);
    await db.revision.update({ where: { id: 'rev' }, data: { frozenAt: new Date(EVENING) } });
    const next = await reviseModel(db, revision?.modelId ?? '', EVENING);
    if (!next.ok) throw new Error(next.message);
    expect([...(await listOperationPlanning(db, [next.revisionId])).values()]).toMatchObject([said]);
  });

  it('dates and weight of a batch, skills of a person', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const dates = { releaseOn: null, dueOn: '2026-03-20', weight: 2 };
    expect(await saveBatchPlanning(db, 'gone', dates)).toMatchObject({ code: 'no-batch' });
    expect(await savePersonSkills(db, 'ada', ['painting', 'wire'])).toEqual({ ok: true });
    expect((await listPeopleWithSkills(db))[0]).toMatchObject({ name: 'Ada', skills: ['painting', 'wire'] });
  });
});
