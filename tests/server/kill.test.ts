import { expect, it } from 'vitest';
import { openBatch } from '@/app/_commands/open-batch';
import { foldBatch } from '@/lib/batch/fold-batch';
import type { Db } from '@/prisma/client';
import { listBatchEvents } from '@/prisma/data/batch-events';
import { findRevisionRoute } from '@/prisma/data/batch-plan';
import { checkSqlite } from '@/prisma/ops/backup';
import { sqliteFile } from '@/prisma/sqlite-adapter';
import type { Workshop } from '../app/serve-workshop';
import { serveWorkshop } from '../app/serve-workshop';
import { EVENING, insertTestWorkshop } from '../app/test-workshop';
import { describeBothDatabases } from '../prisma/both-databases';
import { BenchClient, seededRandom } from './bench-client';

const isSoak = process.env.SOAK === '1';
const KILLS = { sqlite: isSoak ? 200 : 6, postgres: isSoak ? 50 : 3 };
const CLIENTS = 4;
const QUANTITY = 6;

/** Kills between which the same batches are worked on; then new ones, so that histories stay of a bench's length. */
const KILLS_A_SET = 10;
const BATCHES_A_SET = 3;

/** The first answer of a process that just began takes longest. */
const PATIENT = { interval: 2, timeout: 30_000 };

const batchId = (set: number, index: number) => `killed-batch-${set}-${index}`;

async function insertBatches(db: Db, sets: number): Promise<void> {
  await insertTestWorkshop(db);
  for (let set = 0; set < sets; set += 1) {
    for (let index = 0; index < BATCHES_A_SET; index += 1) {
      const request = { batchId: batchId(set, index), revisionId: 'rev', quantity: QUANTITY, dueOn: null };
      const opened = await openBatch(db, { ...request, orderNote: '', personId: null, now: EVENING });
      expect(opened.ok).toBe(true);
    }
  }
}

const acknowledgedBy = (clients: readonly BenchClient[]) =>
  clients.reduce((sum, client) => sum + client.acknowledged.length, 0);

/**
 * Lets all clients send until the server is cut off at a moment of chance: mostly while answers flow, one time in five
 * while the very first request is on its way.
 */
async function workUntilKilled(workshop: Workshop, clients: BenchClient[], set: number, random: () => number) {
  const ids = Array.from({ length: BATCHES_A_SET }, (_, index) => batchId(set, index));
  const before = acknowledgedBy(clients);
  const work = Promise.all(clients.map((client) => client.sendUntilCutOff(workshop.url, ids)));
  const isEarly = random() < 0.2;
  if (!isEarly) await Promise.race([work, expect.poll(() => acknowledgedBy(clients), PATIENT).toBeGreaterThan(before)]);
  await Promise.race([work, new Promise((resolve) => setTimeout(resolve, 500 * random()))]);
  await workshop.kill();
  await work;
}

/** Holds what the database has against what was acknowledged. Returns the number of events. */
async function checkHistories(db: Db, clients: readonly BenchClient[], sets: number): Promise<number> {
  const route = await findRevisionRoute(db, 'rev');
  if (route === null) throw new Error('the revision is gone');
  const acknowledged = clients.flatMap((client) => client.acknowledged);
  let events = 0;
  for (let set = 0; set < sets; set += 1) {
    for (let index = 0; index < BATCHES_A_SET; index += 1) {
      const id = batchId(set, index);
      const history = await listBatchEvents(db, id);
      const head = await db.batch.findUniqueOrThrow({ where: { id }, include: { mixes: true } });
      expect(history.map((event) => event.seq)).toEqual(history.map((_, place) => place + 1));
      expect(head.lastSeq).toBe(history.length);

      const seqByKey = new Map(history.map((event) => [event.key, event.seq]));
      expect(seqByKey.size, 'every key once').toBe(history.length);
      for (const { key, seq } of acknowledged.filter((one) => one.batchId === id)) {
        expect([key, seqByKey.get(key)]).toEqual([key, seq]);
      }
      const state = foldBatch({ ...route.plan, quantity: QUANTITY }, history);
      expect(state.history.length).toBe(history.length);
      const mixes = history.filter((event) => event.body.kind === 'mix-started');
      expect(head.mixes.length, 'rows of mixes in step with the events').toBe(mixes.length);
      events += history.length - 1;
    }
  }
  return events;
}

describeBothDatabases('an app that is killed while events come in', (makeDb) => {
  const kills = KILLS[makeDb.engine];
  it(`keeps every acknowledged event, once, through ${kills} kills`, { timeout: 3_600_000 }, async () => {
    const seed = Number(process.env.KILL_SEED ?? 20_260_105);
    const random = seededRandom(seed);
    const sets = Math.ceil(kills / KILLS_A_SET);
    const databaseUrl = await makeDb.url();
    const setUp = await makeDb.open(databaseUrl);
    await insertBatches(setUp, sets);
    await setUp.$disconnect();

    const clients = Array.from(
      { length: CLIENTS },
      (_, index) => new BenchClient(`phone-${index}`, seededRandom(seed + 1 + index)),
    );
    const first = await serveWorkshop({ databaseUrl, startsEmpty: true });
    let workshop = first;
    try {
      for (let kill = 0; kill < kills; kill += 1) {
        await workUntilKilled(workshop, clients, Math.floor(kill / KILLS_A_SET), random);
        workshop = await serveWorkshop({ databaseUrl, startsEmpty: true, folder: first.folder });
        expect(workshop.output()).toContain('its lock was taken over');
      }
      expect(await workshop.end()).toBe(0);
    } finally {
      await workshop.stop();
      await first.stop();
    }
    const db = await makeDb.open(databaseUrl);
    const events = await checkHistories(db, clients, sets);
    if (makeDb.engine === 'sqlite') expect(checkSqlite(sqliteFile(databaseUrl), 'integrity_check')).toEqual([]);
    const acknowledged = acknowledgedBy(clients);
    const repeated = clients.reduce((sum, client) => sum + client.repeated, 0);
    console.log(
      `${makeDb.engine}: ${kills} kills (seed ${seed}), ${acknowledged} events acknowledged, ${events} in the database, ` +
        `${repeated} sent again after a cut, none lost, none doubled`,
    );
    expect(acknowledged).toBeGreaterThan(kills);
    expect(repeated).toBeGreaterThan(0);
  });
});
