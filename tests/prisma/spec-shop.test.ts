import { expect, test } from 'vitest';
import { findingsOf } from '@/lib/spec/findings-of';
import { specContext } from '@/lib/spec/spec-context';
import { lineClassN } from '@/lib/strength/fishing-line';
import { listSpecModels } from '@/prisma/data/spec-models';
import { readSpecShop } from '@/prisma/data/spec-shop';
import { loadDemo } from '@/prisma/seed/load-demo';
import { describeBothDatabases } from './both-databases';

const NOW = Date.parse('2026-02-10T23:00:00Z');

describeBothDatabases('the shop as the rules see it', (makeDb) => {
  test('models in use are the newest revisions, with wood, wire, glue, hooks and line as they were entered', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const { inUse, shop } = await readSpecShop(db, NOW);
    expect(inUse.map(({ modelName, revisionLetter }) => `${modelName} ${revisionLetter}`)).toEqual([
      'Kettle popper A',
      'Mallet jerkbait B',
      'Plumbline minnow A',
      'Sawhorse lipless A',
    ]);
    const lipless = inUse[3];
    expect(lipless?.wood).toMatchObject({ name: 'Basswood', sheet: { specificGravity: 0.37 }, moisturePercent: null });
    expect(lipless?.line).toEqual({ labelN: 54, type: 'mono', knotShare: null, dragShare: null });
    const [tie, belly] = lipless?.anchors ?? [];
    // 70 degrees to the axis, leaning to the nose: 20 degrees from square, forward.
    expect(tie).toMatchObject({ face: 'back', slantDeg: -20, wire: { sheet: { temper: 'soft' } }, hook: null });
    expect(belly).toMatchObject({ slantDeg: 0, hook: { sheet: { statedStrengthN: 180 } }, adhesive: { sheet: {} } });
    expect(inUse[0]?.anchors[0]).toMatchObject({ wire: null, screwEye: { sheet: { isEyeClosed: false } } });
    expect(shop.lotsInUse).toContainEqual({ materialId: 'demo-epoxy-30', lotCode: 'E30-A-0412' });
    expect(shop.wires.find(({ name }) => name === 'Stainless spring wire .041 in, hard drawn')?.sheet).toMatchObject({
      diameterMm: expect.closeTo(1.0414, 10),
      temper: 'spring',
    });
    expect(shop.woods.length).toBeGreaterThanOrEqual(30);
  });

  test('what is not known stays unknown: no profile, no kind of line, no material', async () => {
    const db = await makeDb();
    const at = new Date(NOW);
    const dates = { createdAt: at, updatedAt: at };
    await db.model.create({
      data: {
        name: 'Bare',
        note: '',
        createdAt: at,
        revisions: {
          create: { id: 'bare', letter: 'A', lengthMm: 70, profile: [], lineLabelN: lineClassN(8), note: '', ...dates },
        },
      },
    });
    const { shop, shelf } = await readSpecShop(db, NOW);
    const [bare] = await listSpecModels(db, ['bare', 'gone'], shelf);
    expect(bare).toMatchObject({ body: null, wood: null, line: null, bill: null, anchors: [], waivers: [] });
    const found = bare === undefined ? [] : findingsOf(bare, specContext(shop, { withFixes: true }));
    expect(found.filter(({ verdict }) => verdict === 'holds')).toEqual([]);
  });

  test('a waiver counts until it is withdrawn, and only for its own revision', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const person = await db.person.findFirstOrThrow();
    const waiver = {
      revisionId: 'demo-sawhorse-a',
      ruleId: 'least-embedment',
      subject: 'model',
      reason: 'Pulled three: all held.',
      personId: person.id,
      grantedAt: new Date(NOW),
    };
    await db.waiver.create({ data: { id: 'stands', ...waiver } });
    await db.waiver.create({ data: { id: 'withdrawn', ...waiver, withdrawnAt: new Date(NOW + 1) } });
    const { inUse } = await readSpecShop(db, NOW);
    expect(inUse.map(({ waivers }) => waivers.map(({ waiverId, personName }) => [waiverId, personName]))).toEqual([
      [],
      [],
      [],
      [['stands', person.name]],
    ]);
  });
});
