import ICAL from 'ical.js';
import { expect, it } from 'vitest';
import { createAccessToken } from '@/app/_commands/create-access-token';
import { openBatch } from '@/app/_commands/open-batch';
import { publishCalendar } from '@/app/_commands/publish-calendar';
import { recordEvent } from '@/app/_commands/record-event';
import { revokeAccessToken } from '@/app/_commands/revoke-access-token';
import { saveTemperatureProfile } from '@/app/_commands/save-temperature-profile';
import { checkTokenText } from '@/app/_server/access-token';
import { currentCalendar } from '@/app/_server/calendar';
import type { BatchAction } from '@/lib/contracts/batch-action';
import { calendarText } from '@/lib/exchange/calendar/calendar-text';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop } from './test-workshop';

const BATCH = 'batch-of-the-calendar';

/** A batch with its first coat on at EVENING: 25 degC all week, so its window is 4 to 24 hours at rates of 1. */
async function coatedBatch(db: Db): Promise<void> {
  await insertTestWorkshop(db);
  const order = { revisionId: 'rev', quantity: 2, dueOn: null, orderNote: 'for a customer', personId: null };
  await openBatch(db, { batchId: BATCH, ...order, now: EVENING - 96 * HOUR_MS });
  const pieces = [1, 2];
  const joints = pieces.flatMap((piece) =>
    ['line-tie', 'belly', 'tail'].map((anchor) => ({ piece, anchorId: `rev-${anchor}` })),
  );
  const mix = { kind: 'mix-started', massG: 9, temperatureC: 25, lotIds: [] } as const;
  const story: readonly (readonly [Instant, BatchAction])[] = [
    [-90, { kind: 'work-done', operationId: 'rev-shape', pieces }],
    [-80, { ...mix, mixId: 'mix-glue', operationId: 'rev-glue', materialId: 'glue' }],
    [-80, { kind: 'joints-set', mixId: 'mix-glue', joints }],
    [-50, { kind: 'work-done', operationId: 'rev-paint', pieces }],
    [0, { ...mix, mixId: 'mix-coat', operationId: 'rev-coat-1', materialId: 'gloss' }],
    [0, { kind: 'coat-applied', mixId: 'mix-coat', pieces }],
  ];
  for (const [index, [hours, action]] of story.entries()) {
    const at = EVENING + hours * HOUR_MS;
    const input = { key: `calendar-${index}`, seenSeq: index + 1, action, at };
    const answer = await recordEvent(db, { batchId: BATCH, input, personId: null, now: EVENING });
    expect(answer).toMatchObject({ ok: true });
  }
}

const publishedAt = async (db: Db, nowAt: Instant) =>
  publishCalendar(db, await currentCalendar(db, await getShop(db), nowAt), nowAt);

describeBothDatabases('the calendar', (makeDb) => {
  it('tells the recoat window of a coat, from its latest opening to its earliest closing, with two alarms', async () => {
    const db = await makeDb();
    await coatedBatch(db);
    const entries = await publishedAt(db, EVENING);
    expect(entries).toMatchObject([
      {
        uid: 'window-mix-coat-rev-coat-1@lurewright',
        sequence: 0,
        startAt: EVENING + 4 * HOUR_MS,
        endAt: EVENING + 24 * HOUR_MS,
        alarms: [
          { from: 'start', minutesBefore: 0 },
          { from: 'end', minutesBefore: 60 },
        ],
      },
    ]);
    const text = calendarText('Test shop', entries);
    expect(text).toContain('DURATION:PT20H');
    expect(text).not.toContain('customer');
    const [event] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(event?.getFirstPropertyValue('summary')).toBe('Batch 1, Test lure rev: recoat window');
  });

  it('a colder shop moves an entry that keeps its uid and rises in sequence; nothing new changes nothing', async () => {
    const db = await makeDb();
    await coatedBatch(db);
    const [first] = await publishedAt(db, EVENING);
    const [same] = await publishedAt(db, EVENING + 10 * MINUTE_MS);
    expect(same).toEqual(first);
    const cold = { otherwiseC: 15, periods: [], profileTolerance: 0, floorC: 10, ceilingC: 30, sensorTolerance: 0 };
    await saveTemperatureProfile(db, cold, EVENING);
    const [moved] = await publishedAt(db, EVENING + 20 * MINUTE_MS);
    expect(moved).toMatchObject({ uid: first?.uid, sequence: 1, changedAt: EVENING + 20 * MINUTE_MS });
    // The slowest plausible rate, 65 kJ/mol, takes 4 h at 25 degC to 9.94 h at 15 degC; the closing is not stretched.
    expect(moved?.startAt).toBe(EVENING + 9 * HOUR_MS + 60 * MINUTE_MS);
    expect(moved?.endAt).toBe(EVENING + 24 * HOUR_MS);
  });

  it('an address can be made and revoked, and does nothing else', async () => {
    const db = await makeDb();
    const made = await createAccessToken(
      db,
      { name: 'Phone', scope: 'calendar:read', sensorId: null, expiresOn: null },
      EVENING,
    );
    if (!made.ok) throw new Error(made.message);
    const check = await checkTokenText(db, made.token, 'calendar:read', EVENING);
    expect(check).toMatchObject({ ok: true });
    expect(await checkTokenText(db, made.token, 'readings:write', EVENING)).toMatchObject({ code: 'wrong-scope' });
    expect(await checkTokenText(db, 'lw_1_2', 'calendar:read', EVENING)).toMatchObject({ code: 'unknown-token' });
    if (check.ok) await revokeAccessToken(db, check.tokenId, EVENING);
    expect(await checkTokenText(db, made.token, 'calendar:read', EVENING)).toMatchObject({ code: 'unknown-token' });
  });
});
