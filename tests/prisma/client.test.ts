import { describe, expect, it } from 'vitest';
import type { Db } from '@/prisma/client';
import { isPostgres, writeTx } from '@/prisma/client';
import { describeBothDatabases } from './both-databases';

const AT = new Date('2026-01-05T08:00:00.000Z');

function addPerson(db: Pick<Db, 'person'>, name: string) {
  return db.person.create({ data: { name, skills: [], createdAt: AT } });
}

/** A counter made of what is at hand: a sensor's version. */
async function raiseVersion(db: Db): Promise<void> {
  await writeTx(db, async (tx) => {
    const { version } = await tx.sensor.findUniqueOrThrow({ where: { id: 'counter' } });
    await tx.sensor.update({ where: { id: 'counter' }, data: { version: version + 1 } });
  });
}

async function addCounter(db: Db): Promise<void> {
  await db.sensor.create({ data: { id: 'counter', name: 'Counter', place: '', version: 0, createdAt: AT } });
}

async function counted(db: Db): Promise<number> {
  return (await db.sensor.findUniqueOrThrow({ where: { id: 'counter' } })).version;
}

describeBothDatabases('writeTx', (makeDb) => {
  it('keeps all of a transaction that ends well', async () => {
    const db = await makeDb();
    await writeTx(db, async (tx) => {
      await addPerson(tx, 'Ada');
      await addPerson(tx, 'Ben');
    });
    expect(await db.person.count()).toBe(2);
  });

  it('keeps nothing of a transaction that throws, and throws the same error on', async () => {
    const db = await makeDb();
    const fault = new Error('the kettle boiled over');
    const attempt = writeTx(db, async (tx) => {
      await addPerson(tx, 'Ada');
      throw fault;
    });
    await expect(attempt).rejects.toBe(fault);
    expect(await db.person.count()).toBe(0);
  });

  it('runs writers in turns: of 40 counts from two clients at once none is lost', async () => {
    const url = await makeDb.url();
    const [one, two] = [await makeDb.open(url), await makeDb.open(url)];
    await addCounter(one);
    await Promise.all(Array.from({ length: 40 }, (_, index) => raiseVersion(index % 2 === 0 ? one : two)));
    expect(await counted(one)).toBe(40);
  });

  it('takes every writer of a crowd of 120 in one client', async () => {
    const db = await makeDb();
    await addCounter(db);
    await Promise.all(Array.from({ length: 120 }, () => raiseVersion(db)));
    expect(await counted(db)).toBe(120);
  });

  it('does not try again after a doubled name: that would never get better', async () => {
    const db = await makeDb();
    await addPerson(db, 'Ada');
    let tries = 0;
    const attempt = writeTx(db, async (tx) => {
      tries += 1;
      await addPerson(tx, 'Ada');
    });
    await expect(attempt).rejects.toMatchObject({ code: 'P2002' });
    expect(tries).toBe(1);
  });

  it('tries again while the database is held by another process, at most six times', async () => {
    const db = await makeDb();
    const busy = Object.assign(new Error('held by another process'), { code: 'P2034' });
    let tries = 0;
    const late = await writeTx(db, async (tx) => {
      tries += 1;
      await addPerson(tx, `Try ${tries}`);
      if (tries < 4) throw busy;
      return 'in';
    });
    expect([late, tries, await db.person.count()]).toEqual(['in', 4, 1]);

    tries = 0;
    const never = writeTx(db, async () => {
      tries += 1;
      throw busy;
    });
    await expect(never).rejects.toBe(busy);
    expect(tries).toBe(6);
  });
});

describeBothDatabases('values come back as they were put in', (makeDb) => {
  it.each([new Date('2026-03-29T00:59:59.999Z'), new Date('1999-12-31T23:59:59.001Z')])(
    'the instant %s, to the millisecond',
    async (at) => {
      const db = await makeDb();
      await db.person.create({ data: { id: 'p', name: 'Ada', skills: [], createdAt: at } });
      expect((await db.person.findUniqueOrThrow({ where: { id: 'p' } })).createdAt).toEqual(at);
    },
  );

  it('whole milliseconds beyond 2 ** 31, and sorted as numbers', async () => {
    const db = await makeDb();
    await addCounter(db);
    const instants = [1_772_000_000_000n, -5n, 9_007_199_254_740_993n];
    for (const atMs of instants) await db.reading.create({ data: { sensorId: 'counter', atMs, temperatureC: 1 } });
    const rows = await db.reading.findMany({ orderBy: { atMs: 'asc' } });
    expect(rows.map((row) => row.atMs)).toEqual([-5n, 1_772_000_000_000n, 9_007_199_254_740_993n]);
  });

  it('a temperature, to 15 digits', async () => {
    const db = await makeDb();
    await addCounter(db);
    const temperatures = [21.456_789_012_345_6, -0.1, 0, 1 / 3];
    for (const [index, temperatureC] of temperatures.entries()) {
      await db.reading.create({ data: { sensorId: 'counter', atMs: BigInt(index), temperatureC } });
    }
    const rows = await db.reading.findMany({ orderBy: { atMs: 'asc' } });
    for (const [index, row] of rows.entries()) expect(row.temperatureC).toBeCloseTo(temperatures[index] ?? 0, 13);
  });

  it('nested JSON with text of all the world, and null where nothing was given', async () => {
    const db = await makeDb();
    const skills = { a: [1, { b: null, c: 'Öse – ½ " \\ 木 🐟' }], d: true, e: 0.1 };
    await db.person.create({ data: { id: 'p', name: 'Zoë 木', skills, createdAt: AT } });
    const person = await db.person.findUniqueOrThrow({ where: { id: 'p' } });
    expect([person.skills, person.name]).toEqual([skills, 'Zoë 木']);
    await addCounter(db);
    const reading = await db.reading.create({ data: { sensorId: 'counter', atMs: 1n, temperatureC: 20 } });
    expect(reading.humidityPct).toBeNull();
  });

  it('true and false', async () => {
    const db = await makeDb();
    await db.person.create({ data: { name: 'Gone', skills: [], isActive: false, createdAt: AT } });
    await addPerson(db, 'Here');
    const rows = await db.person.findMany({ where: { isActive: false } });
    expect(rows.map((row) => [row.name, row.isActive])).toEqual([['Gone', false]]);
  });
});

describeBothDatabases('the tables refuse what cannot be', (makeDb) => {
  it('a reading of a sensor that is not there', async () => {
    const db = await makeDb();
    const attempt = db.reading.create({ data: { sensorId: 'nobody', atMs: 1n, temperatureC: 20 } });
    await expect(attempt).rejects.toMatchObject({ code: 'P2003' });
  });

  it('two readings of one sensor at one instant', async () => {
    const db = await makeDb();
    await addCounter(db);
    const data = { sensorId: 'counter', atMs: 1n, temperatureC: 20 };
    await db.reading.create({ data });
    await expect(db.reading.create({ data })).rejects.toMatchObject({ code: 'P2002' });
  });

  it('two events at one place in a history, or under one key', async () => {
    const db = await makeDb();
    await addBatch(db);
    await addEvent(db, 1, 'key-aaaa');
    await expect(addEvent(db, 1, 'key-bbbb')).rejects.toMatchObject({ code: 'P2002' });
    await expect(addEvent(db, 2, 'key-aaaa')).rejects.toMatchObject({ code: 'P2002' });
  });

  it('and take along what belongs to what is deleted', async () => {
    const db = await makeDb();
    await addBatch(db);
    await addEvent(db, 1, 'key-aaaa');
    await db.batch.delete({ where: { id: 'batch' } });
    expect(await db.batchEvent.count()).toBe(0);
  });
});

async function addBatch(db: Db): Promise<void> {
  await db.model.create({ data: { id: 'model', name: 'Minnow', note: '', createdAt: AT } });
  const revision = { id: 'revision', modelId: 'model', letter: 'A', lengthMm: 90, profile: [], note: '' };
  await db.revision.create({ data: { ...revision, createdAt: AT, updatedAt: AT } });
  const batch = { id: 'batch', number: 1, revisionId: 'revision', quantity: 1, status: 'open', lastSeq: 0 };
  await db.batch.create({ data: { ...batch, orderNote: '', openedAt: AT } });
}

function addEvent(db: Db, seq: number, key: string) {
  const data = { batchId: 'batch', seq, key, at: AT, recordedAt: AT, kind: 'noted', body: {} };
  return db.batchEvent.create({ data });
}

describe('isPostgres', () => {
  it.each([
    ['postgresql://a@b/c', true],
    ['postgres://a@b/c', true],
    ['file:./postgres.db', false],
  ])('%s: %s', (url, expected) => {
    expect(isPostgres(url)).toBe(expected);
  });
});
