/**
 * A process of its own that writes, started by sqlite-adapter.test.ts as: write-worker.ts <what> <url> <count>.
 * `count`: raises a counter so often. `pairs`: adds readings in pairs until it is killed, and prints the number of
 * each pair after it was acknowledged.
 */
import { createDb, writeTx } from '@/prisma/client';

const [what, url = '', count = '0'] = process.argv.slice(2);
const db = await createDb(url);

async function raise(): Promise<void> {
  await writeTx(db, async (tx) => {
    const { version } = await tx.sensor.findUniqueOrThrow({ where: { id: 'counter' } });
    await tx.sensor.update({ where: { id: 'counter' }, data: { version: version + 1 } });
  });
}

async function addPair(pair: number): Promise<void> {
  await writeTx(db, async (tx) => {
    for (const half of [0, 1]) {
      await tx.reading.create({ data: { sensorId: 'counter', atMs: BigInt(2 * pair + half), temperatureC: 20 } });
    }
  });
  process.stdout.write(`${pair}\n`);
}

if (what === 'count') for (let done = 0; done < Number(count); done += 1) await raise();
if (what === 'pairs') for (let pair = Number(count); ; pair += 1) await addPair(pair);
await db.$disconnect();
