import { expect, test } from 'vitest';
import { acceptCalibration } from '@/app/_commands/accept-calibration';
import { makeAcceptance } from '@/app/_commands/make-acceptance';
import { retireCalibration } from '@/app/_commands/retire-calibration';
import { type ConditionDraft, conditionDraft } from '@/app/_server/calibration-draft';
import { calibrationEffect } from '@/app/_server/calibration-effect';
import { analysedSeries } from '@/app/_server/pull-page';
import type { Db } from '@/prisma/client';
import { findAcceptedCalibration, listCalibrations } from '@/prisma/data/calibrations';
import { findPullSeries } from '@/prisma/data/pull-series';
import { readSpecShop } from '@/prisma/data/spec-shop';
import { loadDemo } from '@/prisma/seed/load-demo';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.parse('2026-02-10T23:00:00Z');
const SERIES = 'demo-pull-series';
const UNITS = { lengthUnit: 'inch', forceUnit: 'lbf', massUnit: 'g', temperatureUnit: 'F' } as const;

async function draftOf(db: Db): Promise<Extract<ConditionDraft, { ok: true }> & { readonly version: number }> {
  const series = await findPullSeries(db, SERIES);
  if (series === null) throw new Error('no series');
  const name = series.plan.conditions[0]?.name ?? '';
  const draft = conditionDraft(series, await analysedSeries(db, series), name, UNITS);
  if (!draft.ok) throw new Error(draft.code);
  return { ...draft, version: series.version };
}

async function accept(db: Db) {
  const { key, body, version } = await draftOf(db);
  return acceptCalibration(db, {
    seriesId: SERIES,
    seenVersion: version,
    key,
    body,
    note: '',
    personId: 'demo-ida',
    now: NOW,
  });
}

describeBothDatabases('calibrations', (makeDb) => {
  test('what accepting would change is told before, and comes true', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const draft = await draftOf(db);
    expect(draft.body.pulls).toHaveLength(15);
    expect(draft.body.adhesiveLotCodes).toEqual(['E30-A-0412']);
    const told = await calibrationEffect(db, draft.key, draft, NOW);
    expect(told.isUsable).toBe(true);
    expect(told.before?.exactPulls).toBe(0);
    // A split and a broken wire only say that the bond holds at least so much.
    expect(told.after).toMatchObject({ exactPulls: 13, boundPulls: 2 });
    // The two of basswood with the wire of 1.0 mm soft and this glue.
    expect(told.models.map(({ model }) => model.modelName)).toEqual(['Plumbline minnow', 'Sawhorse lipless']);
    expect(told.models[0]?.changes.map(({ ruleId, before, after }) => [ruleId, before, after])).toContainEqual([
      'calibration-fresh',
      'not-judged',
      'holds',
    ]);
    expect(told.moved.length).toBeGreaterThan(0);
    expect((await readSpecShop(db, NOW)).shop.bonds).toEqual([]);

    expect(await accept(db)).toMatchObject({ ok: true, version: 1 });
    const [bond] = (await readSpecShop(db, NOW)).shop.bonds;
    expect(bond?.belief).toEqual(told.after);
    const again = await calibrationEffect(db, draft.key, await draftOf(db), NOW);
    expect([again.models, again.batches, again.moved]).toEqual([[], [], []]);
  });

  test('the next one supersedes, the one before stays as it was, and one can be retired', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const first = await accept(db);
    const second = await accept(db);
    expect([first, second]).toMatchObject([{ version: 1 }, { version: 2 }]);
    const { key } = await draftOf(db);
    expect((await listCalibrations(db)).map(({ version, status }) => [version, status])).toEqual([
      [2, 'accepted'],
      [1, 'superseded'],
    ]);
    const id = second.ok ? second.calibrationId : '';
    expect(await retireCalibration(db, id, { reason: 'Another glue', now: NOW })).toEqual({ ok: true });
    expect(await retireCalibration(db, id, { reason: 'Again', now: NOW })).toMatchObject({ code: 'not-in-force' });
    expect(await findAcceptedCalibration(db, key)).toBeNull();
    expect((await listCalibrations(db)).every(({ body }) => body.pulls.length === 15)).toBe(true);
    expect((await readSpecShop(db, NOW)).shop.bonds).toEqual([]);
  });

  test('a series that changed since the page was made is not accepted', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const { key, body, version } = await draftOf(db);
    const request = { seriesId: SERIES, seenVersion: version - 1, key, body, note: '', personId: null, now: NOW };
    expect(await acceptCalibration(db, request)).toMatchObject({ ok: false, code: 'changed-meanwhile' });
    expect(await listCalibrations(db)).toEqual([]);
  });

  test('a sample draws so many live pieces of every mix, the same from the same seed, and once', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const joint = await db.joint.findFirstOrThrow({
      where: { mixId: { not: null }, anchor: { embedmentMm: { not: null } } },
      include: { piece: { select: { batchId: true } } },
    });
    const batch = { id: joint.piece.batchId };
    const make = (seriesId: string) =>
      makeAcceptance(db, {
        input: { seriesId, batchId: batch.id, anchorId: joint.anchorId, perMix: 2, demand: 200, seed: 'draw' },
        stepMm: 1.5875,
        personId: 'demo-ida',
        now: NOW,
      });
    expect(await make('sample-one')).toMatchObject({ ok: true });
    expect(await make('sample-one')).toMatchObject({ ok: true });
    await make('sample-two');
    const [one, two] = [await findPullSeries(db, 'sample-one'), await findPullSeries(db, 'sample-two')];
    const codes = one?.specimens.map(({ code }) => code);
    expect(two?.specimens.map(({ code }) => code)).toEqual(codes);
    for (const { id, batchMixId, sheet } of one?.mixes ?? []) {
      const own = one?.specimens.filter(({ mixId }) => mixId === id) ?? [];
      const joints = await db.joint.count({ where: { mixId: batchMixId, anchorId: joint.anchorId } });
      expect(own.length).toBeGreaterThan(0);
      expect(own.length).toBeLessThanOrEqual(Math.min(2, joints));
      expect(own.every(({ piece, setAt }) => piece !== null && setAt !== null)).toBe(true);
      expect(sheet).not.toBeNull();
    }
    expect(
      await makeAcceptance(db, {
        input: { seriesId: 'sample-three', batchId: batch.id, anchorId: 'gone', perMix: 2, demand: 200, seed: 'draw' },
        stepMm: 1,
        personId: null,
        now: NOW,
      }),
    ).toMatchObject({ ok: false, code: 'no-anchor', field: 'anchorId' });
  });
});
