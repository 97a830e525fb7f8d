import { expect, test } from 'vitest';
import { freezeRevision } from '@/app/_commands/freeze-revision';
import { grantWaiver } from '@/app/_commands/grant-waiver';
import { openBatch } from '@/app/_commands/open-batch';
import { reviseModel } from '@/app/_commands/revise-model';
import { saveRuleFigures } from '@/app/_commands/save-rule-figures';
import { withdrawWaiver } from '@/app/_commands/withdraw-waiver';
import { findingChanges, standingOf } from '@/lib/spec/finding-changes';
import { DEFAULT_RULE_FIGURES } from '@/lib/spec/rule-figures';
import { inches } from '@/lib/units/force-and-length';
import type { Db } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';
import { readShopFindings } from '@/prisma/data/shop-findings';
import { findBatchFindings, judgeRevision } from '@/prisma/data/spec-reports';
import { listWaivers } from '@/prisma/data/waivers';
import { loadDemo } from '@/prisma/seed/load-demo';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.parse('2026-02-10T23:00:00Z');
const MINNOW = 'demo-plumbline-a';
const REASON = 'Three pulled to 40 lbf and held.';

/** How a rule stands with an anchor of a revision, by the anchor's name. */
async function standing(db: Db, revisionId: string, ruleId: string, name: string) {
  const report = await judgeRevision(db, revisionId, NOW);
  const finding = report?.findings.find((one) => one.ruleId === ruleId && one.subject.name === name);
  if (finding === undefined) throw new Error(`${ruleId} was not asked of ${name}`);
  return { standing: standingOf(finding), finding };
}

/** The demo's minnow, whose belly hanger is short, with that short waived. */
async function waivedMinnow(db: Db) {
  await loadDemo(db, NOW);
  const person = await db.person.findFirstOrThrow({ where: { isActive: true } });
  const { finding } = await standing(db, MINNOW, 'least-embedment', 'Belly hanger');
  const waiver = {
    ruleId: 'least-embedment',
    subject: finding.subject.key,
    reason: REASON,
    personId: person.id,
  } as const;
  expect(await grantWaiver(db, MINNOW, waiver, NOW)).toEqual({ ok: true });
  return { person, waiver };
}

describeBothDatabases('waivers', (makeDb) => {
  test('a short is accepted with reason, name and date, and can be taken back', async () => {
    const db = await makeDb();
    const { person, waiver } = await waivedMinnow(db);
    const { standing: waived, finding } = await standing(db, MINNOW, 'least-embedment', 'Belly hanger');
    expect(waived).toBe('waived');
    expect(finding.waiver).toMatchObject({ reason: REASON, personName: person.name, grantedAt: NOW });
    expect(await grantWaiver(db, MINNOW, waiver, NOW)).toMatchObject({ ok: false, code: 'not-short' });
    const waiverId = finding.waiver?.waiverId ?? '';
    expect(await withdrawWaiver(db, waiverId, NOW + 1)).toEqual({ ok: true });
    expect(await withdrawWaiver(db, waiverId, NOW + 2)).toEqual({ ok: true });
    expect((await listWaivers(db, [MINNOW]))[0]).toMatchObject({ reason: REASON, withdrawnAt: NOW + 1 });
    expect((await standing(db, MINNOW, 'least-embedment', 'Belly hanger')).standing).toBe('short');
    expect(await withdrawWaiver(db, 'gone', NOW)).toMatchObject({ ok: false, code: 'no-waiver' });
  });

  test('what holds is not waived, nor by somebody who is not there, nor for a revision that is gone', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const person = await db.person.findFirstOrThrow();
    const { finding } = await standing(db, MINNOW, 'least-embedment', 'Line tie');
    const waiver = {
      ruleId: 'least-embedment',
      subject: finding.subject.key,
      reason: REASON,
      personId: person.id,
    } as const;
    expect(await grantWaiver(db, MINNOW, waiver, NOW)).toMatchObject({ code: 'not-short' });
    expect(await grantWaiver(db, 'gone', waiver, NOW)).toMatchObject({ code: 'no-revision' });
    const short = await standing(db, MINNOW, 'least-embedment', 'Belly hanger');
    const byNobody = { ...waiver, subject: short.finding.subject.key, personId: 'nobody' };
    expect(await grantWaiver(db, MINNOW, byNobody, NOW)).toMatchObject({ code: 'no-person', field: 'personId' });
    expect(await listWaivers(db, [MINNOW])).toEqual([]);
  });

  test('a waiver lapses with the next revision and stays with its own', async () => {
    const db = await makeDb();
    await waivedMinnow(db);
    const revised = await reviseModel(db, 'demo-model-plumbline', NOW);
    if (!revised.ok) throw new Error(revised.message);
    expect((await standing(db, revised.revisionId, 'least-embedment', 'Belly hanger')).standing).toBe('short');
    expect((await standing(db, MINNOW, 'least-embedment', 'Belly hanger')).standing).toBe('waived');
    const row = await db.revision.findUniqueOrThrow({ where: { id: revised.revisionId } });
    await freezeRevision(db, revised.revisionId, row.updatedAt.getTime(), NOW);
    expect((await standing(db, revised.revisionId, 'least-embedment', 'Belly hanger')).standing).toBe('short');
  });
});

describeBothDatabases('findings that a batch takes along', (makeDb) => {
  test('they stay as they were, and a change of the rules shows what is found otherwise', async () => {
    const db = await makeDb();
    await waivedMinnow(db);
    const request = { batchId: 'own-batch-1', quantity: 2, dueOn: null, orderNote: '', personId: null, now: NOW };
    expect(await openBatch(db, { ...request, revisionId: MINNOW })).toMatchObject({ ok: true });
    const taken = await findBatchFindings(db, 'own-batch-1');
    const belly = taken?.taken?.findings.find(({ ruleId, waiver }) => ruleId === 'least-embedment' && waiver !== null);
    expect(taken).toMatchObject({ rulesVersion: expect.any(Number), taken: { judgedAt: NOW } });
    expect(belly).toMatchObject({ verdict: 'short', waiver: { reason: REASON } });
    const ofOwn = async () =>
      (await readShopFindings(db, NOW)).affected.filter(({ batchId }) => batchId === 'own-batch-1');
    expect(await ofOwn()).toEqual([]);

    await saveRuleFigures(db, { ...DEFAULT_RULE_FIGURES, leastEmbedmentMm: inches(3 / 4) }, NOW + 1);
    expect((await getShop(db)).ruleFigures.leastEmbedmentMm).toBeCloseTo(19.05, 10);
    expect(await findBatchFindings(db, 'own-batch-1')).toEqual(taken);
    const [affected] = await ofOwn();
    const moved = affected?.changes.filter(({ ruleId }) => ruleId === 'least-embedment');
    expect(moved?.map(({ subjectName, before, after }) => [subjectName, before, after])).toEqual([
      ['Line tie', 'holds', 'short'],
      ['Tail hanger', 'holds', 'short'],
    ]);
  });

  test('a draft that was changed while it was judged is judged again', async () => {
    const db = await makeDb();
    await loadDemo(db, NOW);
    const revised = await reviseModel(db, 'demo-model-plumbline', NOW);
    if (!revised.ok) throw new Error(revised.message);
    const { revisionId } = revised;
    await db.anchor.updateMany({ where: { revisionId }, data: { embedmentMm: 14, drillDepthMm: 15 } });
    const request = { batchId: 'own-batch-2', quantity: 1, dueOn: null, orderNote: '', personId: null, now: NOW };
    expect(await openBatch(db, { ...request, revisionId })).toMatchObject({ ok: true, hasFrozen: true });
    const taken = (await findBatchFindings(db, 'own-batch-2'))?.taken?.findings ?? [];
    const now = (await judgeRevision(db, revisionId, NOW))?.findings ?? [];
    expect(taken.length).toBeGreaterThan(20);
    expect(findingChanges(taken, now)).toEqual([]);
  });
});
