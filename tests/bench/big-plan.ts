import { HOUR_MS, type Instant } from '@/lib/units/instant';
import { openSqlite, sqliteFile } from '@/prisma/sqlite-adapter';
import { insertRow, makeBigWorkshop } from './big-workshop';

/*
 * A workshop of the size that issue 6 asks for: 60 open batches at every stage of an eight-step route, in visits of six
 * pieces, three people with their evenings and a Saturday, racks and a rotator, due dates over seven weeks.
 */

const DAY_MS = 24 * HOUR_MS;
const BATCHES = { openBatches: 60, finishedBatches: 10, readings: 30_000 } as const;
/** Of each step: places it takes, and until when. */
const PLACES: readonly (readonly [string, string, string])[] = [
  ['set', 'rack', 'handle'],
  ['seal', 'rack', 'handle'],
  ['coat-1', 'rotator', 'handle'],
  ['coat-2', 'rotator', 'handle'],
];
const STEPS = ['shape', 'drill', 'set', 'seal', 'sand', 'paint', 'coat-1', 'coat-2'];

/** Makes the database at `url`. */
export async function makeBigPlanWorkshop(url: string, nowAt: Instant): Promise<void> {
  await makeBigWorkshop(url, BATCHES, nowAt);
  const connection = openSqlite(sqliteFile(url));
  const createdAt = new Date(nowAt).toISOString().replace('Z', '+00:00');
  for (const [id, name] of [
    ['bo', 'Bo'],
    ['cem', 'Cem'],
  ]) {
    insertRow(connection, 'Person', { id, name, skills: '[]', isActive: 1, createdAt });
  }
  for (const personId of ['ana', 'bo', 'cem']) {
    for (const weekday of [1, 2, 3, 4, 5, 6]) {
      const hours = weekday === 6 ? [9 * 60, 16 * 60] : [18 * 60, 21 * 60];
      const [fromMinute, toMinute] = hours;
      insertRow(connection, 'BenchHours', { id: `${personId}-${weekday}`, personId, weekday, fromMinute, toMinute });
    }
  }
  for (const [id, name, capacity] of [
    ['rack', 'Rack', 200],
    ['rotator', 'Rotator', 48],
  ]) {
    insertRow(connection, 'Resource', { id, name, kind: id, capacity, createdAt });
  }
  for (const operationId of STEPS) {
    const [, resourceId, holdsUntil] = PLACES.find(([step]) => step === operationId) ?? [operationId, null, 'attended'];
    const setUpMinutes = resourceId === null ? 0 : 5;
    const rest = { mostPieces: 6, resourceId, resourceShare: 'piece', holdsUntil, remedyMinutes: 2 };
    insertRow(connection, 'OperationPlanning', { operationId, setUpMinutes, ...rest });
  }
  const due = connection.prepare(`UPDATE "Batch" SET "dueOn" = ? WHERE "number" = ?`);
  for (let number = 1; number <= BATCHES.openBatches; number += 1) {
    const on = new Date(nowAt + (7 + ((number * 17) % 42)) * DAY_MS).toISOString().slice(0, 10);
    due.run([on, number + BATCHES.finishedBatches]);
  }
  connection.close();
}
