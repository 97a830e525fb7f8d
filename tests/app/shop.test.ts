import { expect, test } from 'vitest';
import { addBenchException } from '@/app/_commands/add-bench-exception';
import { addPerson } from '@/app/_commands/add-person';
import { addSensor } from '@/app/_commands/add-sensor';
import { chooseCureSensor } from '@/app/_commands/choose-cure-sensor';
import { createAccessToken } from '@/app/_commands/create-access-token';
import { removeBenchException } from '@/app/_commands/remove-bench-exception';
import { renamePerson } from '@/app/_commands/rename-person';
import { revokeAccessToken } from '@/app/_commands/revoke-access-token';
import { saveBenchHours } from '@/app/_commands/save-bench-hours';
import { saveShopSettings } from '@/app/_commands/save-shop-settings';
import { saveTemperatureProfile } from '@/app/_commands/save-temperature-profile';
import { setPersonActive } from '@/app/_commands/set-person-active';
import { checkAccessToken } from '@/app/_server/access-token';
import { HOUR_MS } from '@/lib/units/instant';
import type { Weekday } from '@/lib/units/zoned-time';
import type { Db } from '@/prisma/client';
import { listAccessTokens } from '@/prisma/data/access-tokens';
import { findPerson, listActivePeople, listBenchExceptions } from '@/prisma/data/people';
import { listReadingBuckets, listSensorLines } from '@/prisma/data/sensors';
import { getShop } from '@/prisma/data/shop';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 12, 19, 40);

const SETTINGS = {
  name: 'North shed',
  timeZone: 'Europe/Oslo',
  lengthUnit: 'mm',
  temperatureUnit: 'C',
  massUnit: 'g',
  forceUnit: 'N',
  currency: 'NOK',
} as const;

const WEEK = {
  otherwiseC: 12,
  periods: [{ weekdays: [1, 2, 3, 4, 5], from: 18 * 60, to: 22 * 60, temperatureC: 20 }],
  profileTolerance: 2,
  floorC: 0,
  ceilingC: 30,
  sensorTolerance: 0.5,
} as const;

/** Days of the week as the contract gives them. */
const days = (...weekdays: Weekday[]) => weekdays;

async function person(db: Db, name: string): Promise<string> {
  const result = await addPerson(db, name, NOW);
  if (!result.ok) throw new Error(result.message);
  return result.personId;
}

async function sensor(db: Db, name: string): Promise<string> {
  const result = await addSensor(db, { name, place: '' }, NOW);
  if (!result.ok) throw new Error(result.message);
  return result.sensorId;
}

describeBothDatabases('shop', (makeDb) => {
  test('every change that can move a clock raises the version', async () => {
    const db = await makeDb();
    const versions: number[] = [(await getShop(db)).version];
    const note = async () => versions.push((await getShop(db)).version);
    await saveShopSettings(db, SETTINGS, NOW);
    await note();
    await saveTemperatureProfile(db, { ...WEEK, periods: [] }, NOW);
    await note();
    const first = await sensor(db, 'Bench'); // the first one rules the clocks at once
    await note();
    await chooseCureSensor(db, null, NOW);
    await note();
    expect(versions.every((version, index) => index === 0 || version > (versions[index - 1] ?? 0))).toBe(true);
    expect(await getShop(db)).toMatchObject({ name: 'North shed', timeZone: 'Europe/Oslo', cureSensorId: null });
    expect(await chooseCureSensor(db, 'gone', NOW)).toMatchObject({ code: 'no-sensor', field: 'cureSensorId' });
    expect(await chooseCureSensor(db, first, NOW)).toEqual({ ok: true });
  });

  test('the usual week comes back as it was saved', async () => {
    const db = await makeDb();
    await saveTemperatureProfile(
      db,
      { ...WEEK, periods: WEEK.periods.map((period) => ({ ...period, weekdays: [...period.weekdays] })) },
      NOW,
    );
    const { temperatureProfile, floorC, profileToleranceC } = await getShop(db);
    const periods = [{ weekdays: [1, 2, 3, 4, 5], fromMinute: 1080, toMinute: 1320, temperatureC: 20 }];
    expect(temperatureProfile).toEqual({ otherwiseC: 12, periods });
    expect([floorC, profileToleranceC]).toEqual([0, 2]);
  });

  test('people: names once, leaving, and coming back', async () => {
    const db = await makeDb();
    const ada = await person(db, 'Ada');
    const ben = await person(db, 'Ben');
    expect(await addPerson(db, 'ADA', NOW)).toMatchObject({ code: 'name-taken', field: 'name' });
    expect(await renamePerson(db, ben, 'ada')).toMatchObject({ code: 'name-taken' });
    expect(await renamePerson(db, ben, 'Benno')).toEqual({ ok: true });
    expect(await renamePerson(db, 'gone', 'Cy')).toMatchObject({ code: 'no-person' });
    await setPersonActive(db, ada, false);
    expect((await listActivePeople(db)).map((row) => row.name)).toEqual(['Benno']);
    await setPersonActive(db, ada, true);
    expect(await listActivePeople(db)).toHaveLength(2);
  });

  test('bench hours are replaced whole; overlaps are refused, also over midnight and over the week’s end', async () => {
    const db = await makeDb();
    const ada = await person(db, 'Ada');
    const evening = { weekdays: days(1, 2), from: 18 * 60, to: 22 * 60 };
    expect(await saveBenchHours(db, ada, { stretches: [evening] })).toEqual({ ok: true });
    const late = { weekdays: days(2), from: 21 * 60, to: 23 * 60 };
    const overlap = await saveBenchHours(db, ada, { stretches: [evening, late] });
    expect(overlap).toMatchObject({ code: 'overlap', field: 'stretches.1.from' });
    const sundayNight = { weekdays: days(7), from: 23 * 60, to: 2 * 60 };
    const mondayEarly = { weekdays: days(1), from: 60, to: 3 * 60 };
    expect(await saveBenchHours(db, ada, { stretches: [sundayNight, mondayEarly] })).toMatchObject({ code: 'overlap' });
    const back = { weekdays: days(1), from: 22 * 60, to: 1440 };
    expect(await saveBenchHours(db, ada, { stretches: [evening, back] })).toEqual({ ok: true });
    expect((await findPerson(db, ada))?.benchHours).toHaveLength(3);
    expect(await saveBenchHours(db, 'gone', { stretches: [] })).toMatchObject({ code: 'no-person' });
  });

  test('days that differ: of one person, of the whole shop, and taken back', async () => {
    const db = await makeDb();
    const ada = await person(db, 'Ada');
    const away = { onDate: '2026-03-20', from: null, to: null, reason: 'fair' };
    await addBenchException(db, ada, away);
    await addBenchException(db, null, { ...away, from: 600, to: 720 });
    await addBenchException(db, null, { ...away, onDate: '2026-03-01' });
    const [shopDay] = await listBenchExceptions(db, null, '2026-03-12');
    expect(shopDay).toMatchObject({ onDate: '2026-03-20', fromMinute: 600, toMinute: 720 });
    expect(await listBenchExceptions(db, ada, '2026-03-12')).toHaveLength(1);
    await removeBenchException(db, shopDay?.id ?? '');
    expect(await listBenchExceptions(db, null, '2026-03-12')).toEqual([]);
  });

  test('only the first sensor rules the clocks by itself', async () => {
    const db = await makeDb();
    const first = await sensor(db, 'Bench');
    await sensor(db, 'Attic');
    expect((await getShop(db)).cureSensorId).toBe(first);
    expect(await addSensor(db, { name: 'bench', place: '' }, NOW)).toMatchObject({ code: 'name-taken' });
  });

  test('readings are put together by half hours; where there are none there is no bucket', async () => {
    const db = await makeDb();
    const id = await sensor(db, 'Bench');
    const fromAt = Date.UTC(2026, 2, 1);
    const reading = (minute: number, temperatureC: number) => ({
      sensorId: id,
      atMs: BigInt(fromAt + minute * 60_000),
      temperatureC,
    });
    await db.reading.createMany({ data: [reading(0, 18), reading(10, 16), reading(29, 17), reading(95, 12)] });
    const span = { fromAt, toAt: fromAt + 2 * HOUR_MS, bucketMs: HOUR_MS / 2 };
    expect(await listReadingBuckets(db, id, span)).toEqual([
      { firstAt: fromAt, lastAt: fromAt + 29 * 60_000, lowestC: 16, highestC: 18, count: 3 },
      { firstAt: fromAt + 95 * 60_000, lastAt: fromAt + 95 * 60_000, lowestC: 12, highestC: 12, count: 1 },
    ]);
    expect((await listSensorLines(db))[0]?.newest).toMatchObject({ temperatureC: 12 });
  });
});

describeBothDatabases('tokens', (makeDb) => {
  const READINGS = { name: 'Logger', scope: 'readings:write', expiresOn: null } as const;
  const bearer = (token: string) => new Headers({ authorization: `Bearer ${token}` });

  async function token(db: Db, more: { readonly expiresOn?: string } = {}): Promise<string> {
    const made = await createAccessToken(db, { ...READINGS, sensorId: await sensor(db, 'Bench'), ...more }, NOW);
    if (!made.ok) throw new Error(made.message);
    return made.token;
  }

  test('a token opens what it is for, names its sensor, and only its hash is kept', async () => {
    const db = await makeDb();
    const text = await token(db);
    expect(text).toMatch(/^lw_[0-9a-f]{16}_[A-Za-z0-9_-]{43}$/);
    expect(await checkAccessToken(db, bearer(text), 'readings:write', NOW)).toMatchObject({ ok: true });
    expect(await checkAccessToken(db, bearer(text), 'events:write', NOW)).toMatchObject({ code: 'wrong-scope' });
    const rows = JSON.stringify(await db.accessToken.findMany());
    expect(rows).not.toContain(text.slice(-43));
  });

  test('nothing, nonsense and a wrong secret are refused', async () => {
    const db = await makeDb();
    const text = await token(db);
    const wrong = text.slice(0, -1) + (text.endsWith('A') ? 'B' : 'A');
    expect(await checkAccessToken(db, new Headers(), 'readings:write', NOW)).toMatchObject({ code: 'no-token' });
    for (const sent of ['nonsense', wrong, `${text}x`]) {
      expect(await checkAccessToken(db, bearer(sent), 'readings:write', NOW)).toMatchObject({ code: 'unknown-token' });
    }
  });

  test('a revoked token is over at once, an expired one with the end of its last day in the shop', async () => {
    const db = await makeDb();
    await saveShopSettings(db, { ...SETTINGS, timeZone: 'America/Chicago' }, NOW);
    const text = await token(db, { expiresOn: '2026-03-12' });
    const endOfDay = Date.UTC(2026, 2, 13, 5); // 24:00 CDT
    expect(await checkAccessToken(db, bearer(text), 'readings:write', endOfDay - 1)).toMatchObject({ ok: true });
    expect(await checkAccessToken(db, bearer(text), 'readings:write', endOfDay)).toMatchObject({ ok: false });
    const [line] = await listAccessTokens(db);
    await revokeAccessToken(db, line?.id ?? '', NOW);
    await revokeAccessToken(db, line?.id ?? '', NOW + HOUR_MS);
    expect(await checkAccessToken(db, bearer(text), 'readings:write', NOW)).toMatchObject({ code: 'unknown-token' });
    expect((await listAccessTokens(db))[0]?.revokedAt).toBe(NOW);
    const past = { ...READINGS, sensorId: null, scope: 'events:write', expiresOn: '2026-03-11' } as const;
    expect(await createAccessToken(db, past, NOW)).toMatchObject({ code: 'expires-in-the-past' });
  });

  test('last use is noted at most once a minute', async () => {
    const db = await makeDb();
    const text = await token(db);
    const usedAt = async (at: number) => {
      await checkAccessToken(db, bearer(text), 'readings:write', at);
      return (await listAccessTokens(db))[0]?.lastUsedAt;
    };
    expect(await usedAt(NOW)).toBe(NOW);
    expect(await usedAt(NOW + 59_999)).toBe(NOW);
    expect(await usedAt(NOW + 60_000)).toBe(NOW + 60_000);
  });
});
