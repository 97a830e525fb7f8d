import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { SECOND_MS } from '@/lib/units/instant';
import { ROOT } from '@/prisma/ops/schema-text';
import { serveWorkshop } from '../app/serve-workshop';
import { addReading, type BigWorkshop, makeBigWorkshop } from './big-workshop';

/*
 * The Bench of a big workshop, asked for over HTTP from the built app: loading, computing and drawing together, as a
 * phone waits for it. The first line is the size that issue 2 names; the others differ from it in one thing each.
 */

const SIZES: readonly BigWorkshop[] = [
  { openBatches: 300, finishedBatches: 1_000, readings: 1_000_000 },
  { openBatches: 300, finishedBatches: 10_000, readings: 1_000_000 },
  { openBatches: 300, finishedBatches: 1_000, readings: 100_000 },
];
/** Of issue 2: median server time of the first size, ms. */
const TARGET_MS = 80;
const WARM_REQUESTS = 60;
const NEW_READINGS = 15;
const NEW_EVENTS = 15;

interface Measured {
  readonly firstMs: number;
  readonly warmMs: number;
  readonly warm95Ms: number;
  readonly afterReadingMs: number;
  readonly afterEventMs: number;
  readonly recordMs: number;
  readonly pageKb: number;
}

/** Prints the figures of all sizes; true when the first meets its target and the others stay near it. */
export async function run(): Promise<boolean> {
  if (!existsSync(path.join(ROOT, '.next', 'source-hash'))) {
    console.log('Bench page: not measured, the app is not built. Run npm run build first.');
    return true;
  }
  const results: Measured[] = [];
  for (const size of SIZES) results.push(await measureSize(size));
  const [asked, ...others] = results;
  if (asked === undefined) return false;
  const worst = Math.max(...others.map((other) => other.warmMs / asked.warmMs));
  console.log(
    `Bench page: ${asked.warmMs.toFixed(0)} ms of at most ${TARGET_MS} ms; the others at most ${worst.toFixed(2)} times that`,
  );
  return asked.warmMs < TARGET_MS && worst < 1.3;
}

async function measureSize(size: BigWorkshop): Promise<Measured> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-page-'));
  const url = `file:${path.join(folder, 'workshop.db')}`;
  const events = await makeBigWorkshop(url, size, Date.now());
  const megabytes = statSync(path.join(folder, 'workshop.db')).size / 1e6;
  const workshop = await serveWorkshop({ databaseUrl: url, folder, startsEmpty: true });
  try {
    const measured = await measure(workshop.url, url, size.openBatches + size.finishedBatches);
    const sizeText = `${size.openBatches} open, ${size.finishedBatches} finished (${events} events), ${size.readings} readings, ${megabytes.toFixed(0)} MB`;
    console.log(
      [
        `Bench page, ${sizeText}:`,
        `first ${measured.firstMs.toFixed(0)} ms`,
        `median ${measured.warmMs.toFixed(1)} ms`,
        `95 % ${measured.warm95Ms.toFixed(1)} ms`,
        `after a new reading ${measured.afterReadingMs.toFixed(1)} ms`,
        `after a new event ${measured.afterEventMs.toFixed(1)} ms`,
        `recording an event ${measured.recordMs.toFixed(1)} ms`,
        `page ${measured.pageKb.toFixed(0)} kB`,
      ].join(' | '),
    );
    return measured;
  } finally {
    await workshop.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure(base: string, databaseUrl: string, newest: number): Promise<Measured> {
  await fetch(`${base}/models`); // the server's own warming up is not the Bench's
  const first = await timedGet(`${base}/`);
  const warm: number[] = [];
  for (let index = 0; index < WARM_REQUESTS; index += 1) warm.push((await timedGet(`${base}/`)).ms);
  const afterReading: number[] = [];
  for (let index = 0; index < NEW_READINGS; index += 1) {
    addReading(databaseUrl, Date.now() - (NEW_READINGS - index) * SECOND_MS, 18 + index / 10);
    afterReading.push((await timedGet(`${base}/`)).ms);
  }
  const record: number[] = [];
  const afterEvent: number[] = [];
  for (let index = 0; index < NEW_EVENTS; index += 1) {
    record.push(await timedNote(base, `batch-${newest - index}`, index));
    afterEvent.push((await timedGet(`${base}/`)).ms);
  }
  return {
    firstMs: first.ms,
    warmMs: percentile(warm, 0.5),
    warm95Ms: percentile(warm, 0.95),
    afterReadingMs: percentile(afterReading, 0.5),
    afterEventMs: percentile(afterEvent, 0.5),
    recordMs: percentile(record, 0.5),
    pageKb: first.bytes / 1_000,
  };
}

async function timedGet(url: string): Promise<{ readonly ms: number; readonly bytes: number }> {
  const startMs = performance.now();
  const response = await fetch(url, { headers: { 'accept-encoding': 'identity' } });
  const text = await response.text();
  const ms = performance.now() - startMs;
  if (response.status !== 200) throw new Error(`the Bench answered ${response.status}`);
  return { ms, bytes: Buffer.byteLength(text) };
}

async function timedNote(base: string, batchId: string, index: number): Promise<number> {
  const startMs = performance.now();
  const response = await fetch(`${base}/api/v1/batches/${batchId}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: base },
    body: JSON.stringify({
      key: `bench-note-${index}`,
      seenSeq: 0,
      action: { kind: 'noted', text: 'note', pieces: [1] },
    }),
  });
  await response.text();
  if (response.status !== 201) throw new Error(`a note was answered ${response.status}`);
  return performance.now() - startMs;
}

function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
