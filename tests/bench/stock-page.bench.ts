import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { HOUR_MS } from '@/lib/units/instant';
import { ROOT } from '@/prisma/ops/schema-text';
import { openSqlite, sqliteFile } from '@/prisma/sqlite-adapter';
import { serveWorkshop } from '../app/serve-workshop';
import { makeBigWorkshop } from './big-workshop';

/*
 * The screens of Stock in a shop with 5,000 lots and 200,000 movements, asked for over HTTP from the built app, beside
 * 300 open batches.
 */

const MATERIALS = 200;
const LOTS = 5_000;
const MOVEMENTS_PER_LOT = 40;
/** Of issue 5: median server time of the stock page, ms. */
const TARGET_MS = 80;
const REQUESTS = 40;

/** Prints the figures; true when the stock page meets its target. */
export async function run(): Promise<boolean> {
  if (!existsSync(path.join(ROOT, '.next', 'source-hash'))) {
    console.log('Stock page: not measured, the app is not built. Run npm run build first.');
    return true;
  }
  const folder = mkdtempSync(path.join(tmpdir(), 'stock-page-'));
  const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
  const nowAt = Date.now();
  await makeBigWorkshop(databaseUrl, { openBatches: 300, finishedBatches: 300, readings: 1_000 }, nowAt);
  insertStock(databaseUrl, nowAt);
  const workshop = await serveWorkshop({ databaseUrl, folder, startsEmpty: true });
  try {
    console.log(`Stock, ${LOTS} lots, ${LOTS * MOVEMENTS_PER_LOT} movements, 300 open batches:`);
    let isFast = true;
    for (const [name, address, targetMs] of [
      ['stock page', '/stock', TARGET_MS],
      ['stock page, searched', '/stock?q=material+1', TARGET_MS],
      ['lots', '/stock/lots', TARGET_MS],
      ['lots, page 40', '/stock/lots?page=40', TARGET_MS],
      ['a lot with its movements', '/stock/m-1/lots/lot-1', null],
      ['shortages', '/stock/shortages', null],
    ] as const) {
      const medianMs = await medianOf(`${workshop.url}${address}`);
      const target = targetMs === null ? '' : ` of at most ${targetMs} ms`;
      console.log(`  ${name}: median ${medianMs.toFixed(1)} ms${target}`);
      if (targetMs !== null && medianMs > targetMs) isFast = false;
    }
    return isFast;
  } finally {
    await workshop.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function medianOf(url: string): Promise<number> {
  const times: number[] = [];
  for (let request = 0; request < REQUESTS; request += 1) {
    const startMs = performance.now();
    const response = await fetch(url);
    await response.text();
    if (response.status !== 200) throw new Error(`${url} answered ${response.status}`);
    times.push(performance.now() - startMs);
  }
  return times.sort((a, b) => a - b)[REQUESTS / 2] ?? Number.NaN;
}

/** Lots spread over materials, each taken from in small pieces until a third is left; every third one is used up. */
function insertStock(url: string, nowAt: number): void {
  const connection = openSqlite(sqliteFile(url));
  connection.exec('PRAGMA synchronous = OFF');
  connection.exec('BEGIN');
  const iso = new Date(nowAt).toISOString().replace('Z', '+00:00');
  const material = connection.prepare(
    'INSERT INTO "Material" ("id", "kind", "name", "sheetRevision", "note", "createdAt", "updatedAt", "stockUnit", "reorderPoint") VALUES (?, ?, ?, \'\', \'\', ?, ?, \'pieces\', ?)',
  );
  for (let index = 0; index < MATERIALS; index += 1) {
    material.run([`m-${index}`, 'hook', `Material ${index}`, iso, iso, index % 5 === 0 ? 500 : null]);
  }
  const bill = connection.prepare(
    'INSERT INTO "BillLine" ("id", "revisionId", "position", "materialId", "quantity", "quantityUnit", "note") VALUES (?, \'rev\', ?, ?, 2, \'pieces\', \'\')',
  );
  for (let index = 0; index < 12; index += 1) bill.run([`bill-${index}`, index + 1, `m-${index}`]);
  const lot = connection.prepare(
    'INSERT INTO "Lot" ("id", "materialId", "code", "part", "quantity", "quantityUnit", "receivedOn", "supplierNote", "priceMinor", "movedMilli", "lastOrder", "isUsedUp", "createdAt") VALUES (?, ?, ?, \'whole\', 120, \'pieces\', ?, \'\', 900, ?, ?, ?, ?)',
  );
  const movement = connection.prepare(
    'INSERT INTO "StockMovement" ("id", "lotId", "order", "kind", "quantityMilli", "leftMilli", "reason", "batchId", "key", "at") VALUES (?, ?, ?, \'issue\', ?, ?, \'bench\', ?, ?, ?)',
  );
  for (let index = 0; index < LOTS; index += 1) {
    const each = index % 3 === 0 ? -3_000 : -2_000;
    const receivedOn = new Date(nowAt - (index % 900) * 24 * HOUR_MS).toISOString().slice(0, 10);
    const moved = each * MOVEMENTS_PER_LOT;
    const isUsedUp = moved === -120_000 ? 1 : 0;
    const place = [`lot-${index}`, `m-${index % MATERIALS}`, `Lot ${index}`, receivedOn];
    lot.run([...place, moved, MOVEMENTS_PER_LOT, isUsedUp, iso]);
    for (let order = 1; order <= MOVEMENTS_PER_LOT; order += 1) {
      const id = `move-${index}-${order}`;
      const batchId = `batch-${1 + ((index + order) % 600)}`;
      movement.run([id, `lot-${index}`, order, each, 120_000 + each * order, batchId, id, iso]);
    }
  }
  connection.exec('COMMIT');
  connection.exec('ANALYZE');
  connection.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
  connection.close();
}
