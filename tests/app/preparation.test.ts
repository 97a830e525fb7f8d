import { expect, it } from 'vitest';
import { makePreparation } from '@/app/_commands/make-preparation';
import { openBatch } from '@/app/_commands/open-batch';
import { tickPreparation } from '@/app/_commands/tick-preparation';
import { USUAL_CHOICES } from '@/lib/prepare/preparation';
import { findPreparation } from '@/prisma/data/preparations';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop } from './test-workshop';

const CHOICES = { ...USUAL_CHOICES, temperatureC: 21 };

describeBothDatabases('preparing a batch', (openDatabase) => {
  it('keeps the plan and what was ticked off, once, with who was first', async () => {
    const db = await openDatabase();
    await insertTestWorkshop(db);
    const opened = await openBatch(db, {
      batchId: 'batch-to-prepare',
      revisionId: 'rev',
      quantity: 4,
      dueOn: null,
      orderNote: '',
      personId: null,
      now: EVENING,
    });
    if (!opened.ok) throw new Error(opened.message);
    expect(await makePreparation(db, 'nowhere', CHOICES, EVENING)).toMatchObject({ ok: false, code: 'no-batch' });
    expect(await makePreparation(db, opened.batchId, CHOICES, EVENING)).toEqual({ ok: true });
    const stored = await findPreparation(db, opened.batchId);
    if (stored === null) throw new Error('not stored');
    // The test revision has neither figures of its anchors nor a profile: nothing is guessed.
    expect(stored.body.cards.map((card) => card.obstacle)).toEqual(['anchor-figures', 'no-body', 'no-body']);
    const tick = { preparationId: stored.id, item: 'mix:glue:1:a', isDone: true };
    await tickPreparation(db, tick, { personId: 'ada', nowAt: EVENING });
    await tickPreparation(db, tick, { personId: 'ben', nowAt: EVENING + 1000 });
    const again = await findPreparation(db, opened.batchId);
    expect(again?.ticks.get(tick.item)).toEqual({ at: EVENING, personName: 'Ada' });
    await tickPreparation(db, { ...tick, isDone: false }, { personId: 'ben', nowAt: EVENING + 2000 });
    await makePreparation(db, opened.batchId, { ...CHOICES, arrangement: 'traceable' }, EVENING + 3000);
    const anew = await findPreparation(db, opened.batchId);
    expect(anew).toMatchObject({ number: 2, body: { choices: { arrangement: 'traceable' } } });
    expect(anew?.ticks.size).toBe(0);
    expect(
      await tickPreparation(db, { ...tick, preparationId: 'gone' }, { personId: null, nowAt: EVENING }),
    ).toMatchObject({ ok: false, code: 'no-preparation' });
  });
});
