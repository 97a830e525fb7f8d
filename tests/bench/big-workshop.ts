import type { BatchEventBody } from '@/lib/batch/events';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import { migrateToNewest } from '@/prisma/ops/migrate';
import { openSqlite, sqliteFile } from '@/prisma/sqlite-adapter';

/*
 * A workshop of the size that issue 2 asks for, written with plain SQL because it holds millions of rows: open batches
 * at every stage of an eight-step route, finished ones from the years before, and one-minute readings up to now.
 */

export interface BigWorkshop {
  readonly openBatches: number;
  readonly finishedBatches: number;
  readonly readings: number;
}

export const BIG_SENSOR_ID = 'big-sensor';
const PIECES = Array.from({ length: 24 }, (_, index) => index + 1);
const HANDFULS = [0, 6, 12, 18].map((from) => PIECES.slice(from, from + 6));
const ANCHORS = ['tie', 'belly', 'tail'];

const SHEET: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' }],
  milestoneHours: { handle: 6, sand: 24, 'recoat-from': 4, 'recoat-by': 72, paint: 48, 'pull-test': 168, ship: 200 },
  sources: {},
};

/** Name, kind, material, and what of which earlier step it waits for. */
const ROUTE = [
  ['shape', 'work', null, null],
  ['drill', 'work', null, ['shape', 'done']],
  ['set', 'glue', 'glue', ['drill', 'done']],
  ['seal', 'coat', 'gloss', ['set', 'handle']],
  ['sand', 'work', null, ['seal', 'sand']],
  ['paint', 'work', null, ['sand', 'done']],
  ['coat-1', 'coat', 'gloss', ['paint', 'done']],
  ['coat-2', 'coat', 'gloss', ['coat-1', 'recoat']],
] as const;

type Step = (typeof ROUTE)[number];
type Connection = ReturnType<typeof openSqlite>;

/** Makes the database at `url`; returns how many events it holds. */
export async function makeBigWorkshop(url: string, size: BigWorkshop, nowAt: Instant): Promise<number> {
  await migrateToNewest(url);
  const connection = openSqlite(sqliteFile(url));
  connection.exec('PRAGMA synchronous = OFF');
  connection.exec('BEGIN');
  insertShop(connection, nowAt);
  const events = insertBatches(connection, size, nowAt);
  insertReadings(connection, size.readings, nowAt);
  connection.exec('COMMIT');
  connection.exec('ANALYZE');
  connection.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
  connection.close();
  return events;
}

/** Adds the reading of a minute and raises the sensor's version, as the API does. */
export function addReading(url: string, at: Instant, temperatureC: number): void {
  const connection = openSqlite(sqliteFile(url));
  connection.prepare('INSERT INTO "Reading" VALUES (?, ?, ?, NULL)').run([BIG_SENSOR_ID, at, temperatureC]);
  connection.prepare('UPDATE "Sensor" SET "version" = "version" + 1 WHERE "id" = ?').run([BIG_SENSOR_ID]);
  connection.close();
}

export function insertRow(connection: Connection, table: string, values: Readonly<Record<string, unknown>>): void {
  const names = Object.keys(values);
  const columns = names.map((name) => `"${name}"`).join(', ');
  const marks = names.map(() => '?').join(', ');
  connection.prepare(`INSERT INTO "${table}" (${columns}) VALUES (${marks})`).run(Object.values(values));
}

const iso = (at: Instant) => new Date(at).toISOString().replace('Z', '+00:00');

function insertShop(connection: Connection, nowAt: Instant): void {
  const at = iso(nowAt - 3 * 365 * 24 * HOUR_MS);
  const dates = { createdAt: at, updatedAt: at };
  insertRow(connection, 'Sensor', { id: BIG_SENSOR_ID, name: 'Shelf', place: 'shop', version: 1, createdAt: at });
  insertRow(connection, 'Shop', {
    id: 1,
    name: 'Big workshop',
    timeZone: 'America/Chicago',
    lengthUnit: 'mm',
    temperatureUnit: 'C',
    massUnit: 'g',
    forceUnit: 'N',
    currency: 'USD',
    temperatureProfile: JSON.stringify({ otherwiseC: 16, periods: [] }),
    profileToleranceC: 2,
    floorC: 10,
    ceilingC: 28,
    sensorToleranceC: 0.5,
    cureSensorId: BIG_SENSOR_ID,
    version: 1,
    ...dates,
  });
  insertRow(connection, 'Person', { id: 'ana', name: 'Ana', skills: '[]', isActive: 1, createdAt: at });
  for (const [id, kind] of [
    ['glue', 'adhesive'],
    ['gloss', 'coating'],
  ]) {
    const figures = JSON.stringify(SHEET);
    insertRow(connection, 'Material', { id, kind, name: `Big ${id}`, figures, sheetRevision: '', note: '', ...dates });
  }
  insertRow(connection, 'Model', { id: 'model', name: 'Big minnow', note: '', createdAt: at });
  const revision = { id: 'rev', modelId: 'model', letter: 'A', frozenAt: at, lengthMm: 100, profile: '[]', note: '' };
  insertRow(connection, 'Revision', { ...revision, ...dates });
  for (const [position, name] of ANCHORS.entries()) {
    const anchor = { id: name, revisionId: 'rev', position, name, role: 'belly-hanger', kind: 'twisted-wire' };
    insertRow(connection, 'Anchor', anchor);
  }
  for (const [position, [name, kind, materialId, need]] of ROUTE.entries()) {
    const operation = { id: name, revisionId: 'rev', position, name, kind, attendedMinutes: 2, materialId };
    insertRow(connection, 'RouteOperation', { ...operation, anchorPositions: '[]', caution: 'epoxy' });
    if (need === null) continue;
    const [afterOperationId, wait] = need;
    insertRow(connection, 'OperationNeed', { id: `need-${name}`, operationId: name, afterOperationId, wait });
  }
}

/** Open batches are the newest; each is some steps into its route, and works on it every evening. */
function insertBatches(connection: Connection, size: BigWorkshop, nowAt: Instant): number {
  const total = size.openBatches + size.finishedBatches;
  let events = 0;
  for (let number = 1; number <= total; number += 1) {
    const isOpen = number > size.finishedBatches;
    const steps = isOpen ? 1 + (number % (ROUTE.length - 1)) : ROUTE.length;
    // The newest step of an open batch was done in the last hours; finished ones lie back month by month.
    const lastAt = isOpen ? nowAt - (number % 40) * 20 * MINUTE_MS : nowAt - (40 + (number % 900)) * 24 * HOUR_MS;
    events += insertBatch(connection, `batch-${number}`, number, ROUTE.slice(0, steps), lastAt, isOpen);
  }
  return events;
}

function insertBatch(
  connection: Connection,
  batchId: string,
  number: number,
  steps: readonly Step[],
  lastAt: Instant,
  isOpen: boolean,
): number {
  const openedAt = lastAt - steps.length * 40 * HOUR_MS - HOUR_MS;
  const told = story(batchId, steps, openedAt, isOpen);
  insertRow(connection, 'Batch', {
    id: batchId,
    number,
    revisionId: 'rev',
    quantity: PIECES.length,
    status: isOpen ? 'open' : 'finished',
    lastSeq: told.length,
    dueOn: number % 3 === 0 ? '2030-01-01' : null,
    orderNote: `Order ${number}`,
    openedAt: iso(openedAt),
    finishedAt: isOpen ? null : iso(lastAt),
  });
  for (const piece of PIECES) {
    insertRow(connection, 'Piece', { id: `${batchId}-${piece}`, batchId, number: piece });
    for (const anchorId of ANCHORS) {
      insertRow(connection, 'Joint', {
        id: `${batchId}-${piece}-${anchorId}`,
        pieceId: `${batchId}-${piece}`,
        anchorId,
      });
    }
  }
  for (const [index, { at, body }] of told.entries()) {
    if (body.kind === 'mix-started') {
      const { mixId, number: mixNumber, materialId, massG } = body;
      insertRow(connection, 'Mix', { id: mixId, batchId, number: mixNumber, materialId, massG, mixedAt: iso(at) });
    }
    const event = { id: `${batchId}-e${index}`, batchId, seq: index + 1, key: `${batchId}-${index}`, at: iso(at) };
    const rest = { recordedAt: iso(at), personId: 'ana', kind: body.kind, body: JSON.stringify(body) };
    insertRow(connection, 'BatchEvent', { ...event, ...rest });
  }
  return told.length;
}

interface Told {
  readonly at: Instant;
  readonly body: BatchEventBody;
}

/** Two mixes a glue-up or coat, joints a handful at a time, forty hours from step to step. */
function story(batchId: string, steps: readonly Step[], openedAt: Instant, isOpen: boolean): Told[] {
  const told: Told[] = [{ at: openedAt, body: { kind: 'batch-opened', quantity: PIECES.length } }];
  let at = openedAt;
  let mixes = 0;
  const add = (body: BatchEventBody) => told.push({ at, body });
  for (const [operationId, kind, materialId] of steps) {
    at += 40 * HOUR_MS;
    if (kind === 'work' || materialId === null) {
      add({ kind: 'work-done', operationId, pieces: PIECES });
      continue;
    }
    for (const half of [HANDFULS.slice(0, 2), HANDFULS.slice(2)]) {
      mixes += 1;
      const mixId = `${batchId}-mix-${mixes}`;
      const cup = { operationId, materialId, materialName: `Big ${materialId}`, sheet: SHEET, massG: 12 };
      add({ kind: 'mix-started', mixId, number: mixes, ...cup, temperatureC: 20, lotIds: [] });
      if (kind === 'coat') add({ kind: 'coat-applied', mixId, pieces: half.flat() });
      for (const handful of kind === 'glue' ? half : []) {
        at += 5 * MINUTE_MS;
        const joints = handful.flatMap((piece) => ANCHORS.map((anchorId) => ({ piece, anchorId })));
        add({ kind: 'joints-set', mixId, joints });
      }
      add({ kind: 'mix-closed', mixId });
    }
  }
  if (!isOpen) add({ kind: 'batch-finished' });
  return told;
}

function insertReadings(connection: Connection, count: number, nowAt: Instant): void {
  const insert = connection.prepare('INSERT INTO "Reading" VALUES (?, ?, ?, NULL)');
  const lastAt = Math.floor(nowAt / MINUTE_MS) * MINUTE_MS - 5 * MINUTE_MS;
  for (let i = count - 1; i >= 0; i -= 1) {
    const temperatureC = 17 + 5 * Math.sin((i * 2 * Math.PI) / 1440) + 0.3 * Math.sin(i / 7);
    insert.run([BIG_SENSOR_ID, lastAt - i * MINUTE_MS, Math.round(temperatureC * 10) / 10]);
  }
}
